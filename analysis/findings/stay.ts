import { DAY_MS } from '../history.ts';
import type { Direction } from '../trace.ts';

/** The coach's present stay at one place: a camp, a yard. Everything that stands crooked there is crooked in each stroke. */
export interface StayMemory {
  /** Usable strokes of this stay so far. */
  strokes: number;
  /** Those of them that were parts of a movement and are not told of by themselves, and those that made one whole. */
  parts: number;
  joined: number;
  lastAtMs: number | null;
  lastDirection: Direction | null;
  /** How long the room had rested before the latest stroke; null: it was the first. */
  restedMs: number | null;
  /** Usable strokes since the room last stood for a season, the latest included; null: it never did. */
  sinceStanding: number | null;
}

/** A coach that rested for so long may have been driven to another place meanwhile. */
const DRIVEN_HOURS = 40;

/** Seals set and lubricants stiffen where a room stands for so many days. A guess, no source. */
const STANDING_DAYS = 60;
/** So many strokes free them again. A guess, no source. */
const FREEING_STROKES = 6;

/** No stroke yet. */
export function beginStayMemory(): StayMemory {
  return {
    strokes: 0,
    parts: 0,
    joined: 0,
    lastAtMs: null,
    lastDirection: null,
    restedMs: null,
    sinceStanding: null,
  };
}

/**
 * Counts a stroke to the present stay, or begins another. Nobody drives with a room out: a retract belongs to the
 * extend before it, however long ago that was.
 */
export function noteStay(stay: StayMemory, atMs: number, direction: Direction): void {
  const restedMs = stay.lastAtMs === null ? Number.POSITIVE_INFINITY : atMs - stay.lastAtMs;
  const wasOut = stay.lastDirection === 'extend' && direction === 'retract';
  const isNew = restedMs >= DRIVEN_HOURS * 3_600_000 && !wasOut;
  if (isNew) Object.assign(stay, { parts: 0, joined: 0 });
  stay.strokes = isNew ? 1 : stay.strokes + 1;
  stay.restedMs = stay.lastAtMs === null ? null : restedMs;
  if (stay.restedMs !== null && stay.restedMs >= STANDING_DAYS * DAY_MS) stay.sinceStanding = 1;
  else if (stay.sinceStanding !== null) stay.sinceStanding += 1;
  stay.lastAtMs = atMs;
  stay.lastDirection = direction;
}

/**
 * Whether a shift that has lasted for the latest `run` strokes began as the coach came here and is known from here
 * only: it may be the ground that it stands on. One stroke's noise may have hidden the first of it.
 */
export function mayBeThePlace({ strokes }: Pick<StayMemory, 'strokes'>, run: number): boolean {
  return run === strokes || run === strokes - 1;
}

/**
 * Whether a shift that has lasted for the latest `run` strokes came with the first ones after the room had stood for a season:
 * those are stiff, and free it. One stroke's noise may have hidden the first of it.
 */
export function mayBeStiffness({ sinceStanding }: Pick<StayMemory, 'sinceStanding'>, run: number): boolean {
  return sinceStanding !== null && sinceStanding <= FREEING_STROKES && run <= sinceStanding + 1;
}
