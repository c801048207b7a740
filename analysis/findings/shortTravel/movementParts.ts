import type { Direction } from '../../trace.ts';
import type { FindingContext } from '../finding.ts';
import type { RecentFlags } from '../recent.ts';
import type { DirectionTravel } from './travelMemory.ts';

/** A movement that was broken off is taken up within so long, or later where it was let go. */
const TAKEN_UP_HOURS = 24;
/** A room that somebody left half open stands so for a stay at most: a guess, no source. */
const LEFT_OPEN_DAYS = 30;
/** So much of the usual time makes a whole movement. */
export const WHOLE = { least: 0.85, most: 1.25 } as const;

/**
 * How much of a whole movement, by its time, this stroke and those that it goes on from make together; null: it begins one
 * of its own. A room moves one way until it moves the other: strokes of one direction in a row are parts of one movement,
 * let go and taken up again, unless together they are more than a whole, when a stroke between them was not recorded. Where
 * only one direction ever is recorded, only what comes to a whole one is known for that.
 */
export function madeTogether({ state, event, direction }: FindingContext, part: number): number | null {
  const { travel } = state;
  const hours = (event.atMs - travel.atMs) / 3_600_000;
  if (travel.direction !== direction || hours > 24 * LEFT_OPEN_DAYS) return null;
  const own = travel[direction];
  const together = travel.part + part;
  const usual = Math.max(1, own.took);
  if (together > WHOLE.most * usual) return null;
  if (hours > TAKEN_UP_HOURS && own.latest.at(-1)?.stopped !== false) return null;
  const recordsBoth = state.usable.extend > 0 && state.usable.retract > 0;
  return recordsBoth || isWhole(together, usual) ? together : null;
}

/** Whether so much of the expected time is a whole movement, where one took `usual` of it lately. */
export function isWhole(part: number, usual = 1): boolean {
  return part >= WHOLE.least * usual && part <= WHOLE.most * usual;
}

/** What was broken off was not short after all: the movement came so far, and to the stop or not. */
export function takeBack(
  recent: RecentFlags,
  travel: DirectionTravel,
  direction: Direction,
  stopped: boolean,
): void {
  const flags = recent[`short-travel ${direction}`];
  if (flags !== undefined && flags.length > 0) flags[flags.length - 1] = false;
  const broken = travel.latest.at(-1);
  if (broken === undefined) return;
  broken.short = 0;
  broken.stopped = stopped;
}
