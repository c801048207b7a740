/** A mean square over strokes, square amperes. */
export interface UsualSquare {
  /** How many strokes it is a mean over, up to a most. */
  strokes: number;
  square: number;
}

/**
 * What a side's sensor reads while no current flows, and its noise in records without a rest, which contain the motor's
 * own ripple.
 */
export interface RestMemory {
  readonly offset: UsualSquare;
  readonly noise: UsualSquare;
  readonly noiseRunning: UsualSquare;
}

/** No stroke yet. */
export function beginRestMemory(): RestMemory {
  const none = () => ({ strokes: 0, square: 0 });
  return { offset: none(), noise: none(), noiseRunning: none() };
}
