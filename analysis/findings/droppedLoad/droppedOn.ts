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

/** A bin has lost its load if its current is below this part of its normal. */
const LOST_PART = 0.55;
/**
 * A load that a warning tells of is back where the side draws more than this part of its normal. The limit is higher
 * than the one for a loss: in the cold, or after a winter, a motor that turns without load draws more than it did, and
 * its normal may be of warmer days. A guess, no source.
 */
const STILL_LOST = 0.75;
/**
 * Where an `uneven-sides` warning says that the other side carries more, this one has lost its load only below this
 * part.
 */
const LOST_WHERE_UNEVEN = 0.4;
/** This many bins of 64 in a row, 8 % of the travel, are more than a light place. */
const LEAST_BINS = 5;
/**
 * A stretch of this part of the travel counts as the whole: what is left beside it is too little to show whether the
 * clamp is sound. A guess, no source.
 */
const WHOLE_PART = 0.75;
/**
 * Where a single motor lost its load, the stall may have fallen by up to this part of the fall of the running current.
 */
const STANDS_PART = 0.3;
/**
 * And by up to this much in any case, natural logarithm: a weak supply, or a start that fell between two samples, takes
 * no more off it.
 */
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
    // A clamp that was left off may still read a little.
    const isDoubted = openOn(state, 'sensor-doubt', side) !== undefined;
    // A loss that a warning tells of is not over because the stall is no longer read, as after a change of the sampling
    // rate.
    const mayLie = !isSaid && (isDoubted || isAlone(context));
    const isRead = readsOn(analysis, side, channel.profile, stretch);
    if (mayLie && !isRead && !stallStands(context, side, isWhole(stretch))) return [];
    if (hasFormerProfile(channel) && !isBorneBySome(context, side)) return [];
    return [{ side, ...stretch }];
  });
}

/** Whether a stretch counts as the whole travel. */
export const isWhole = ({ from, to }: { readonly from: number; readonly to: number }): boolean =>
  to - from >= WHOLE_PART;

/** Whether there is no other side to compare with, in the room or on this stroke. */
function isAlone({ state, analysis }: FindingContext): boolean {
  return state.room.sides.length < 2 || Object.keys(analysis.sides).length < 2;
}

/**
 * Whether another side bears what this one lost. Work on the mechanism may have eased the room, but then it eased both
 * sides: compared with what was usual before that work, a side has lost its load only if another works no less than it
 * did.
 */
function isBorneBySome({ state, analysis, direction, doubtful }: FindingContext, side: string): boolean {
  return state.room.sides.some((other) => {
    const usual = channelOf(state, other, direction)?.profile ?? [];
    if (other === side || doubtful.has(other) || analysis.sides[other] === undefined) return false;
    const ratios = ratiosTo(analysis, other, usual).filter((ratio) => !Number.isNaN(ratio));
    return ratios.length > 0 && median(ratios) >= 1;
  });
}

/** A side's current along the travel, by bin, as a part of the usual one; NaN where either is not known. */
function ratiosTo({ sides }: DoneAnalysis, side: string, normal: readonly (number | null)[]): number[] {
  return sides[side].profile.map((amps, bin) => {
    const usual = normal[bin] ?? null;
    return amps === null || usual === null || usual <= 0 ? Number.NaN : amps / usual;
  });
}

/** A side that drives as ever draws at least this part of its normal. A guess, no source. */
const AS_EVER_PART = 0.8;

/**
 * Whether the side reads as ever on the rest of the way. Then the clamp is sound, because a bad one would lower all its
 * readings alike, and neither start nor stall needs to show it. (A cable that is slack where the way begins leaves the
 * start without load as well.)
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
 * Whether the current at standstill is still what it was. It is V/R, which no lost load changes, while a clamp that
 * reads too little, or was left off, reads it too low as well. Where neither start nor stall was read, a loss over the
 * whole travel cannot be told from a bad clamp: false.
 */
function stallStands(context: FindingContext, side: string, whole: boolean): boolean {
  const running = context.residual(side, 'runningAmps');
  const stall = context.residual(side, 'endStopAmps') ?? context.residual(side, 'inrushAmps');
  if (running === null || stall === null) return !whole;
  return stall.rise > Math.min(STANDS_RISE, STANDS_PART * running.rise);
}

/**
 * The longest stretch over which the side draws less than one of the `parts` of its normal, by the first that has one;
 * null: none.
 */
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
