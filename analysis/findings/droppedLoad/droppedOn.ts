import { hasFormerProfile } from '../../baseline/channel.ts';
import type { DoneAnalysis } from '../../measures.ts';
import { channelOf } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { rollingMedian } from '../../statistics/rollingMedian.ts';
import type { Direction } from '../../trace.ts';
import { type FindingContext, openOf, openOn } from '../finding.ts';
import type { Dropped } from './dropped.ts';
import { endedAlone } from './endedAlone.ts';
import { longestBelow } from './longestBelow.ts';
import { neverLoaded } from './neverLoaded.ts';

/** A bin whose current fell below this part of its normal lost its load. */
const LOST_PART = 0.55;
/**
 * What was said of a side is over where it draws more than this part of its normal again: in the cold, or after a winter, a
 * motor that turns without load draws more than it did, and its normal may be one of warmer days. A guess, no source.
 */
const STILL_LOST = 0.75;
/** Where the other side is said to carry more already, this one is no longer driving only below this part. */
const LOST_WHERE_UNEVEN = 0.4;
/** So many bins of 64 in a row, 8 % of the travel, are more than a light place. */
const LEAST_BINS = 5;
/** A stretch of so much of the travel is the whole of it, and what is left beside it tells of no clamp. A guess, no source. */
const WHOLE_PART = 0.75;
/** Of what the running current lost, the stall may have lost so much where a single motor lost its load. */
const STANDS_PART = 0.3;
/** No supply and no start that fell between two samples takes more off it, natural logarithm. */
const STANDS_RISE = -0.35;

/** Sides that ran with hardly any load, or not at all, for part or all of this stroke's travel. */
export function droppedOn(context: FindingContext): Dropped[] {
  const { state, analysis, direction } = context;
  return state.room.sides.flatMap((side) => {
    const ended = endedAlone(context, side);
    if (ended !== null) return [ended];
    const never = neverLoaded(context, side);
    if (never !== null) return [{ side, ...never }];
    const channel = context.doubtful.has(side) ? undefined : channelOf(state, side, direction);
    const isSaid = openOn(state, 'dropped-load', side) !== undefined;
    const isUneven = openOf(state, 'uneven-sides').some((open) => open.side !== side);
    const parts = [isUneven ? LOST_WHERE_UNEVEN : LOST_PART, ...(isSaid ? [STILL_LOST] : [])];
    const stretch = channel === undefined ? null : longestLost(analysis, side, channel.profile, parts);
    if (channel === undefined || stretch === null) return [];
    // A clamp that was left off may read a little of something.
    const isDoubted = openOn(state, 'sensor-doubt', side) !== undefined;
    // What was said is not over for a stall that is no longer read, as after a change of the sampling rate.
    const mayLie = !isSaid && (isDoubted || isAlone(context));
    const isRead = readsOn(analysis, side, channel.profile, stretch);
    if (mayLie && !isRead && !stallStands(context, side, isWhole(stretch))) return [];
    if (hasFormerProfile(channel) && !isBorneBySome(context, side)) return [];
    return [{ side, ...stretch }];
  });
}

/** Whether a stretch is as good as the whole travel. */
export const isWhole = ({ from, to }: { readonly from: number; readonly to: number }): boolean =>
  to - from >= WHOLE_PART;

/** Without another side to compare with, as where there is none. */
function isAlone({ state, analysis }: FindingContext): boolean {
  return state.room.sides.length < 2 || Object.keys(analysis.sides).length < 2;
}

/**
 * Whether another side bears what this one lost. Work on the mechanism may have eased the room, but then it eased both
 * sides: against what was usual before it, a side lost its load only where another works no less than it did.
 */
function isBorneBySome({ state, analysis, direction, doubtful }: FindingContext, side: string): boolean {
  return state.room.sides.some((other) => {
    const usual = channelOf(state, other, direction)?.profile ?? [];
    if (other === side || doubtful.has(other) || analysis.sides[other] === undefined) return false;
    const ratios = ratiosTo(analysis, other, usual).filter((ratio) => !Number.isNaN(ratio));
    return ratios.length > 0 && median(ratios) >= 1;
  });
}

/** A side's current along the travel as parts of the usual one; NaN where either is not known. */
function ratiosTo({ sides }: DoneAnalysis, side: string, normal: readonly (number | null)[]): number[] {
  return sides[side].profile.map((amps, bin) => {
    const usual = normal[bin] ?? null;
    return amps === null || usual === null || usual <= 0 ? Number.NaN : amps / usual;
  });
}

/** Of its normal a side draws at least this part where it drives as ever. A guess, no source. */
const AS_EVER_PART = 0.8;

/**
 * Whether the side reads as ever on the rest of the way: then the clamp is sound, which takes from all that it reads alike,
 * and no start or stall has to tell so. A cable that is slack where the way begins leaves the start without load as well.
 */
function readsOn(
  analysis: DoneAnalysis,
  side: string,
  normal: readonly (number | null)[],
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  const all = ratiosTo(analysis, side, normal);
  const rest = all.filter(
    (ratio, bin) => !Number.isNaN(ratio) && (bin < from * all.length || bin >= to * all.length),
  );
  return rest.length >= all.length * (1 - WHOLE_PART) && median(rest) >= AS_EVER_PART;
}

/**
 * Whether the current at standstill is still what it was: it is V/R, which no lost load changes, while a clamp that reads
 * too little, or was left off, reads it as much too low. Where no start and no stall was read, a load that was lost over
 * the whole travel is not told.
 */
function stallStands(context: FindingContext, side: string, whole: boolean): boolean {
  const running = context.residual(side, 'runningAmps');
  const stall = context.residual(side, 'endStopAmps') ?? context.residual(side, 'inrushAmps');
  if (running === null || stall === null) return !whole;
  return stall.rise > Math.min(STANDS_RISE, STANDS_PART * running.rise);
}

/** By the first of the `parts` of its normal below which the side draws for long enough; null: by none. */
function longestLost(
  analysis: DoneAnalysis,
  side: string,
  normal: readonly (number | null)[],
  parts: readonly number[],
): { from: number; to: number } | null {
  if (analysis.sides[side] === undefined) return null;
  const ratios = rollingMedian(ratiosTo(analysis, side, normal), 1);
  for (const part of parts) {
    const { first, bins, known } = longestBelow(ratios, part);
    if (known >= LEAST_BINS) return { from: first / ratios.length, to: (first + bins) / ratios.length };
  }
  return null;
}

/** The name of the latest strokes of one direction among the flags. */
export const keyOf = (side: string, direction: Direction) => `dropped-load ${side} ${direction}` as const;
