import type { HeldReading } from '../../measures.ts';
import type { Direction } from '../../trace.ts';

/** The highest that one side read in a stroke, by `highestOf`. */
export interface HighestRead {
  readonly direction: Direction;
  /** Amperes, less the offset. */
  readonly amps: number;
  /** Amperes as they were read, offset included. */
  readonly rawAmps: number;
  /** Whether the stroke by itself looks as if it were cut off there. */
  readonly isCut: boolean;
  /** As in the side's measures; null: none. */
  readonly held: HeldReading | null;
}

/** One side's latest strokes, oldest first. */
export interface CutMemory {
  latest: HighestRead[];
}

/** No stroke yet. */
export function beginCutMemory(): CutMemory {
  return { latest: [] };
}
