import type { Direction } from '../../trace.ts';

/** How long one of the latest strokes seemed to take. */
interface TimedStroke {
  /** Against what was expected, natural logarithm. */
  longer: number;
  /** Whether it holds the usual course of the current from end to end, or as many samples as ever. */
  whole: boolean;
}

/** The latest strokes of each direction. */
export interface ClockMemory extends Record<Direction, TimedStroke[]> {
  /** The logger's stated samples a second on the latest stroke that took its usual time; null: none did. */
  usualHz: number | null;
  /** The rate that was last found, natural logarithm; null: none, or dropped since. */
  said: number | null;
  /** Strokes in a row since then that took their usual time: a logger may state a wrong rate now and then only. */
  usualRun: number;
  /** When the latest stroke is said to have begun, and how many in a row are said to have begun at that very moment. */
  beganAtMs: number | null;
  beganTogether: number;
}

/** No stroke yet. */
export function beginClockMemory(): ClockMemory {
  return {
    extend: [],
    retract: [],
    usualHz: null,
    said: null,
    usualRun: 0,
    beganAtMs: null,
    beganTogether: 0,
  };
}
