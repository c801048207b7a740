import type { Direction } from '../../trace.ts';

/**
 * How far a start or a stop read above what was expected, and a healthy one's standard deviation, amperes; null: none
 * was judged.
 */
export type ReadPeak = { readonly amps: number; readonly spread: number } | null;

/** How far one stroke read above what was expected of it. */
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

/**
 * One side's latest strokes without a rest: amperes above what was expected, by direction, and everything they read.
 */
export interface ZeroMemory extends Record<Direction, number[]> {
  read: ReadStroke[];
}

/** No stroke yet. */
export function beginZeroMemory(): ZeroMemory {
  return { extend: [], retract: [], read: [] };
}
