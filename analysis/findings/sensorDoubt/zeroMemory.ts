import type { Direction } from '../../trace.ts';

/** What a start or a stop read over what was expected, and a healthy one's standard deviation, amperes; null: none was judged. */
export type ReadPeak = { readonly amps: number; readonly spread: number } | null;

/** What one stroke read over what was expected of it. */
export interface ReadStroke {
  readonly runningAmps: number;
  readonly stallAmps: number;
  /** Standard deviation of a healthy stall, amperes. */
  readonly stallSpread: number;
  readonly start: ReadPeak;
  readonly stop: ReadPeak;
  /** How much longer it took, natural logarithm. */
  readonly longer: number;
}

/** One side's latest strokes without any rest: amperes over what was expected, by direction; and all it read. */
export interface ZeroMemory extends Record<Direction, number[]> {
  read: ReadStroke[];
}

/** No stroke yet. */
export function beginZeroMemory(): ZeroMemory {
  return { extend: [], retract: [], read: [] };
}
