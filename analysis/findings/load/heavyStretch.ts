import type { SideMeasures } from '../../measures.ts';
import { channelOf } from '../../roomState.ts';
import { medianInPlace } from '../../statistics/median.ts';
import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';
import { rollingMedian } from '../../statistics/rollingMedian.ts';
import { comesAt, type Direction } from '../../trace.ts';
import { type FindingContext, openOf } from '../finding.ts';
import { flag, flagsOf, isLasting, isOver } from '../recent.ts';
import { togetherUntil } from '../stallSpike/jolts.ts';
import { swingOf } from '../stallSpike/swing.ts';
import { turnOf } from '../stallSpike/turnOf.ts';

/**
 * A part of the travel, 0 (fully retracted) to 1, over which a side draws more than it used to while the rest is as
 * ever.
 */
export interface HeavyStretch {
  readonly side: string;
  readonly from: number;
  readonly to: number;
  /** How much more it draws at the highest place, as a part of what is usual there. */
  readonly part: number;
}

/**
 * A stretch stands at least this high above the usual course (natural logarithm), and this many times the spread of the
 * rest. Guesses, no source.
 */
const HIGH = Math.log(1.25);
const SIGMAS = 5;
/**
 * And at least this high in absolute terms: a stretch may stand out only because the rest of the travel takes less, as
 * on a side that the other drags along.
 */
const STILL_HIGH = HIGH / 2;
/**
 * A stretch reaches to where it is half as high. At least this many bins of 64: fewer are a place where something
 * catches.
 */
const FEWEST_BINS = 3;
/** The course is smoothed over five bins of 64, so that a peak of two bins leaves nothing. */
const HALF_WINDOW = 2;
/** At either end of the travel seals are pressed and let go, more in the cold: parts of the travel. */
const SEAL = 0.06;
/**
 * A room breaks away in this first part of its way, now here and now there. A stretch that begins there is told by the
 * way back, on which it comes last.
 */
const BREAKS_AWAY = 0.12;
/** A peak this near a stretch explains it, or is its edge: parts of the travel. */
const NEAR = 0.05;
const LEAST_STROKES = 3;
const CLEAR_STROKES = 4;

/** The stretch over which a side ran harder on this stroke than it usually does there; null: there is none. */
function stretchOn(context: FindingContext, side: string): HeavyStretch | null {
  const { state, analysis, direction } = context;
  const measured = analysis.sides[side];
  const usual = channelOf(state, side, direction)?.profile ?? [];
  if (measured === undefined || context.doubtful.has(side) || usual.length === 0) return null;
  const found = highestStretch(measured, usual);
  if (found === null || hasPeakIn(measured, found)) return null;
  if (comesAt(direction === 'extend' ? found.from : found.to, direction) < BREAKS_AWAY) return null;
  if (comesAt((found.from + found.to) / 2, direction) > togetherUntil(analysis, side)) return null;
  if (swingOf(measured.profile, usual, turnOf(state.room)) !== null) return null;
  return { side, ...found };
}

function highestStretch(
  { profile }: SideMeasures,
  usual: readonly (number | null)[],
): Omit<HeavyStretch, 'side'> | null {
  const known = new Float64Array(profile.length);
  let count = 0;
  const ratios = new Float64Array(profile.length).fill(Number.NaN);
  for (let bin = 0; bin < ratios.length; bin++) {
    const [amps, normal] = [profile[bin], usual[bin] ?? null];
    if (amps === null || normal === null || !(amps > 0 && normal > 0)) continue;
    ratios[bin] = Math.log(amps / normal);
    known[count++] = ratios[bin];
  }
  if (count < profile.length / 2) return null;
  const centre = medianInPlace(known.subarray(0, count));
  let high = 0;
  for (let bin = 0; bin < ratios.length; bin++) if (ratios[bin] - centre > HIGH) high++;
  if (high < FEWEST_BINS) return null;
  const smooth = rollingMedian(
    ratios.map((ratio) => ratio - centre),
    HALF_WINDOW,
  );
  const seal = Math.round(SEAL * smooth.length);
  let top = seal;
  for (let bin = seal; bin < smooth.length - seal; bin++) if (!(smooth[bin] <= smooth[top])) top = bin;
  const spread = medianAbsoluteDeviation(smooth.filter((ratio) => !Number.isNaN(ratio)));
  if (!(smooth[top] > Math.max(HIGH, SIGMAS * spread)) || smooth[top] + centre < STILL_HIGH) return null;
  let from = top;
  while (from > 0 && smooth[from - 1] > smooth[top] / 2) from--;
  let to = top + 1;
  while (to < smooth.length && smooth[to] > smooth[top] / 2) to++;
  if (to - from < FEWEST_BINS) return null;
  return { from: from / smooth.length, to: to / smooth.length, part: Math.expm1(smooth[top]) };
}

function hasPeakIn(
  { spikes }: SideMeasures,
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  return spikes.some(({ position }) => position > from - NEAR && position < to + NEAR);
}

const keyOf = (side: string, direction: Direction) => `heavy-stretch ${side} ${direction}` as const;

/** A stretch that the latest strokes showed. */
export interface FoundStretch extends HeavyStretch {
  /** Whether enough of the latest strokes showed one, of this direction or of both. */
  readonly lasts: boolean;
}

/**
 * Takes a stroke in (to be called once for each) and answers the stretches of the sides that have one, the highest
 * first. A side with an open `stall-spike` warning has none: its peaks explain what it draws more near them.
 */
export function takeStretches(context: FindingContext): FoundStretch[] {
  const { state, analysis, direction } = context;
  const all = state.room.sides.flatMap((side) => {
    if (analysis.sides[side] === undefined) return [];
    const found = stretchOn(context, side);
    const oneWay = flag(state.recent, keyOf(side, direction), found !== null);
    const bothWays = flag(state.recent, `heavy-stretch ${side}`, found !== null);
    const lasts = [oneWay, bothWays].some((flags) => isLasting(flags, LEAST_STROKES, LEAST_STROKES + 1));
    const isSaid = openOf(state, 'stall-spike').some((open) => open.side === side);
    return found !== null && !isSaid ? [{ ...found, lasts }] : [];
  });
  return all.sort((a, b) => b.part - a.part);
}

/**
 * A stretch that is there shows on at least so many of the latest strokes: now and then it is too short to be found.
 */
const SHOWN = { strokes: 2, of: 4 };

/** Whether a side has shown a stretch of late, whether or not the latest stroke did. */
export function isStretchedLately({ state }: Pick<FindingContext, 'state'>, side: string): boolean {
  return isLasting(flagsOf(state.recent, `heavy-stretch ${side}`), SHOWN.strokes, SHOWN.of);
}

/** Whether two stretches are of one place. */
export function isSamePlace(a: HeavyStretch, b: HeavyStretch): boolean {
  return a.from < b.to && b.from < a.to;
}

/** Whether a side ran harder over a stretch of the latest stroke of a direction: its course is not the usual one. */
export function isStretched(
  { state, direction }: Pick<FindingContext, 'state' | 'direction'>,
  side: string,
): boolean {
  return flagsOf(state.recent, keyOf(side, direction)).at(-1) === true;
}

/**
 * Whether a side has run as ever for so long, in the direction that this stroke was made in, that a stretch is over.
 */
export function stretchIsOver({ state, direction }: FindingContext, side: string): boolean {
  return isOver(flagsOf(state.recent, keyOf(side, direction)), CLEAR_STROKES);
}
