import { hasOwnNormal } from '../../baseline/channel.ts';
import type { DoneAnalysis } from '../../measures.ts';
import { channelOf } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { rollingMedian } from '../../statistics/rollingMedian.ts';
import type { FindingContext } from '../finding.ts';
import { longestBelow } from './longestBelow.ts';

/**
 * A motor that turns without load draws less than this part of what another side needs for the same room. A guess, no
 * source.
 */
const IDLE_PART = 0.35;
/**
 * Over the whole travel it draws less than this part: a side that has lost its load draws up to 0.55 of what it did,
 * and the other side, which bears the room alone, at least a quarter more. Sides that share the load, however unevenly,
 * are not that far apart.
 */
const IDLE_ALL_ALONG = 0.44;
/** A side that idles over a stretch only draws at least this part of what the other does on the rest. */
const DRIVING_PART = 0.6;
/** Where no usual course is known, this many bins of 64 in a row are more than a light place. */
const LEAST_BINS = 8;
/**
 * A side that draws this part of its rating works, whatever the other side does: that may be the heavy one. A guess, no
 * source.
 */
const IDLE_OF_RATING = 0.35;
/**
 * Where no rating is given: a side that draws the first part of its own stall current works if another draws the second
 * part of its stall current. A motor without load draws a twentieth to a tenth of its stall, and one that suits the
 * room no more than a third (makers' data sheets of permanent-magnet motors). The limits between are guesses, no
 * source.
 */
const OF_STALL = { working: 0.13, overloaded: 0.4 };
/**
 * The motors of a room start alike. If a side's start reads less than this part of another's, its clamp may have
 * another scale.
 */
const SAME_MOTOR = 0.6;

/**
 * Where a side idles over a stretch it draws less than this part of what it draws itself on the rest: otherwise it is
 * the other side that draws more there. A guess, no source.
 */
const LIGHT_OF_OWN = 0.5;

/** A stretch of the travel, and what the side draws there, amperes. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly amps: number;
}

/**
 * The stretch over which a side runs without load while the room still learns, so that there is no usual course to
 * compare with: it draws only a small part of what another side does there. The whole travel counts only if the side
 * starts like the other: a clamp with another scale, or one left off, lowers all readings alike. Null: none, or the
 * room has a course of its own.
 */
export function neverLoaded(context: FindingContext, side: string): { from: number; to: number } | null {
  const { state, analysis, direction, doubtful } = context;
  const channel = channelOf(state, side, direction);
  const isKnown =
    channel === undefined || hasOwnNormal(channel) || channel.shapes.some((shape) => shape !== null);
  if (isKnown || doubtful.has(side) || analysis.sides[side] === undefined) return null;
  const others = Object.keys(analysis.sides).filter((name) => name !== side && !doubtful.has(name));
  if (others.length === 0) return null;
  const ratios = ratiosToOthers(analysis, side, others);
  // The stretch comes first: a side that idles for more than half of its way may drive on the rest.
  const part = idlePart(analysis, side, ratios);
  if (part !== null && !works(context, side, others, part.amps)) return { from: part.from, to: part.to };
  const { inrushAmps, runningAmps } = analysis.sides[side];
  const known = ratios.filter((ratio) => !Number.isNaN(ratio));
  const startsAlike = others.every((name) => inrushAmps >= SAME_MOTOR * analysis.sides[name].inrushAmps);
  const idles = startsAlike && known.length > 0 && median(known) < IDLE_ALL_ALONG;
  return idles && !works(context, side, others, runningAmps) ? { from: 0, to: 1 } : null;
}

/** Whether a side that draws this many amperes works, however much more the others draw. */
function works(
  { state, analysis }: FindingContext,
  side: string,
  others: readonly string[],
  amps: number,
): boolean {
  const { ratedAmps } = state.room;
  return ratedAmps === null
    ? worksBesideHeavy(analysis, side, others, amps)
    : amps >= IDLE_OF_RATING * ratedAmps;
}

/** Whether the side works as much as it should, and another one is overloaded. */
function worksBesideHeavy(
  { sides }: DoneAnalysis,
  side: string,
  others: readonly string[],
  amps: number,
): boolean {
  const stallOf = (name: string) => Math.max(sides[name].inrushAmps, sides[name].endStopAmps ?? 0);
  const isOverloaded = (name: string) => sides[name].runningAmps > OF_STALL.overloaded * stallOf(name);
  return amps > OF_STALL.working * stallOf(side) && others.some(isOverloaded);
}

/** A side's current along the travel as parts of what the others draw there; NaN where either is not known. */
function ratiosToOthers({ sides }: DoneAnalysis, side: string, others: readonly string[]): number[] {
  return sides[side].profile.map((amps, bin) => {
    const theirs = others.flatMap((name) => sides[name].profile[bin] ?? []);
    return amps === null || theirs.length === 0 ? Number.NaN : amps / Math.max(1e-9, median(theirs));
  });
}

/** The stretch over which a side idles if it drives on the rest of the travel; null: none. */
function idlePart({ sides }: DoneAnalysis, side: string, ratios: readonly number[]): Stretch | null {
  const best = longestBelow(rollingMedian(ratios, 1), IDLE_PART);
  if (best.known < LEAST_BINS) return null;
  const isInside = (bin: number) => bin >= best.first && bin < best.first + best.bins;
  const beside = ratios.filter((ratio, bin) => !(isInside(bin) || Number.isNaN(ratio)));
  if (beside.length === 0 || median(beside) < DRIVING_PART) return null;
  const { profile } = sides[side];
  const drawn = (there: boolean) =>
    median(profile.flatMap((amps, bin) => (amps !== null && isInside(bin) === there ? [amps] : [])));
  const amps = drawn(true);
  if (amps >= LIGHT_OF_OWN * drawn(false)) return null;
  return { from: best.first / ratios.length, to: (best.first + best.bins) / ratios.length, amps };
}
