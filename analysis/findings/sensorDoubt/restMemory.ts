/** What a side's sensor reads while nothing flows: mean squares over its strokes, square amperes. */
export interface RestMemory {
  /** How many they are of, at most. */
  strokes: number;
  offset: number;
  noise: number;
}

export function beginRestMemory(): RestMemory {
  return { strokes: 0, offset: 0, noise: 0 };
}
