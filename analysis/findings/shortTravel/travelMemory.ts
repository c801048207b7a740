import type { Direction } from '../../trace.ts';
import type { HowOftenOfSides } from '../howOften.ts';

/**
 * What tells how far a room travelled. `turns`: counted by the motor (`turnsAs`), whatever the supply was; `time`: the time
 * that it took, on a supply that was recorded or (`blind`) not.
 */
export type TravelJudgedBy = 'turns' | 'time' | 'blind';

/** A stroke within so long was made on the supply of the one before it, more or less. */
export const SAME_SUPPLY_HOURS = 168;

/** What is remembered of the strokes of one direction. */
export interface DirectionTravel {
  /** Share of strokes that ended at the stop, while nothing was short; null: none seen. */
  stopRate: number | null;
  /**
   * The latest strokes: how much shorter than expected, less what another explains, whether they came to the stop, and the
   * part of their expected time that they took.
   */
  latest: { short: number; stopped: boolean; by: TravelJudgedBy; part: number }[];
  /** How the whole course fits beside a part of it on the latest quick strokes in a row (`squeezedOverCut`). */
  courses: number[];
  /** By how much fewer turns than expected the latest stroke took, natural logarithm; null: not counted. */
  fewer: number | null;
  /** The part of the expected time that the latest whole stroke took. */
  took: number;
  /** How long the latest stalls were held, seconds, oldest first, by side. */
  held: Record<string, number[]>;
  /** How surely the latest strokes lack their own end, and how much shorter they were than the way before. */
  ends: { readonly lacks: number; readonly shorter: number }[];
  /** At whose end strokes of this direction were said to be short; null: nothing is said of them. */
  saidOf: Direction | null;
}

/** What is remembered of how far the room went, by direction and of the latest stroke whichever way. */
export interface TravelMemory extends Record<Direction, DirectionTravel> {
  /** How much shorter than expected the latest stroke was, natural logarithm; 0: it was not. */
  shortBy: number;
  direction: Direction | null;
  /** Whether it was so short that it counts by itself. */
  wasShort: boolean;
  /** When that was, and the part of the expected time that it took, with what it goes on from. */
  atMs: number;
  part: number;
  /** Whether one side of it stopped far from its end. */
  leftBehind: boolean;
  /** Whether the record before this stroke could not be read, so that nobody knows where the room stood. */
  followsUnread: boolean;
  /** Strokes in a row, whichever way, that were all quicker than expected. */
  quickRun: number;
  /** By how much less than expected the latest strokes drew at standstill, natural logarithm. */
  fell: number[];
  /** The latest stroke whose turns were counted: how many fewer, and what they seem fewer by for its standstill alone. */
  counted: {
    readonly fewer: number;
    readonly fell: number;
    readonly direction: Direction;
    readonly atMs: number;
  } | null;
  /** Whether the turns came to be fewer from one stroke to the next on the same standstill, and have been since. */
  isStep: boolean;
  /** Which end of the travel the latest short strokes lacked, whichever way they went (`missingEnd`). */
  missing: number[];
  /**
   * Which way the first of the latest short strokes in a row went, surely short right after a whole one the other way, and by how
   * much it was, natural logarithm; null: the latest was not short, or nobody saw which came first.
   */
  began: { readonly direction: Direction; readonly shortBy: number } | null;
  /** How often strokes were short since that was said of them, by direction. */
  said: HowOftenOfSides;
  /** Whether it may have been cut short, and is no whole stroke to learn from. */
  mayBeCut: boolean;
}

/** No stroke yet. */
export function beginTravelMemory(): TravelMemory {
  const travel = (): DirectionTravel => ({
    stopRate: null,
    latest: [],
    courses: [],
    fewer: null,
    took: 1,
    held: {},
    ends: [],
    saidOf: null,
  });
  return {
    extend: travel(),
    retract: travel(),
    shortBy: 0,
    wasShort: false,
    direction: null,
    atMs: 0,
    part: 0,
    leftBehind: false,
    followsUnread: false,
    quickRun: 0,
    fell: [],
    counted: null,
    isStep: false,
    missing: [],
    began: null,
    said: {},
    mayBeCut: false,
  };
}
