/** A mean square over strokes, square amperes. */
export interface UsualSquare {
  /** How many they are of, at most. */
  strokes: number;
  square: number;
}

/** What a side's sensor reads while nothing flows, and its noise in records without any rest, which is the running motor's as well. */
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
