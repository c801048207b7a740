import { type Residual, SEASON_SPREADS } from '../../baseline/judge.ts';
import { median } from '../../statistics/median.ts';
import { otherWay } from '../../trace.ts';
import { LEAST_RUN } from '../charts/chartDesign.ts';
import { chartStep } from '../charts/chartStep.ts';
import { keepLatest } from '../charts/keepLatest.ts';
import type { FindingContext } from '../finding.ts';
import { mayBeStiffness, mayBeThePlace } from '../stay.ts';
import { coldAllowance, followSeason, unseenWeather } from '../unseen.ts';
import { hasLasted, takeLasting } from './lastingRise.ts';
import { loadDesign, zeroLeft } from './loadDesign.ts';
import { latestOf, latestOneWay, type SideLoad } from './loadMemory.ts';
import { hasRisenOneWay, isAsEverBack, isBothWays, ONE_WAY, WEATHER_OF_ONE_WAY } from './oneWayRise.ts';

/** A rise of the running current below 4.5 % is never a reason to call anybody, however quiet the room. Natural logarithm. */
const RISE = { kLeast: 0.045, hLeast: 0.11 };
/** More than the ground that a coach stands on does to the current: then one stay is enough to tell. */
const PLACE_RISE = 0.13;
/** The same where nobody recorded the temperature: a frost of some days does more. */
const FROST_RISE = 0.2;

/** More than a season's standing does to the first strokes after it, natural logarithm. A guess, no source. */
const STIFF_RISE = 0.25;

/**
 * The charts count strokes as if each told anew, and those of one spell tell of one weather, in a cold or a mild place as far off
 * the season as weather gets: they allow for so many standard deviations of it, where the moving mean (`lastingRise.ts`) reckons
 * how long it lasts. A guess, no source.
 */
const SPELL = 1.25;

/** The strokes that a rise is told by, at most. */
const MOST_RUN = 6;

/** How the running current of a side stands after a stroke that its baseline told something of. */
export interface SideRise {
  readonly side: string;
  /** Median of the latest strokes, natural logarithm. */
  readonly rise: number;
  /** Standard deviation of this stroke. */
  readonly deviation: number;
  /** Whether it stands above its normal, by its charts. */
  readonly hasRisen: boolean;
  /** Whether it has risen for longer than weather lasts that nobody recorded. */
  readonly lasts: boolean;
  /** Whether that is so in the direction of this stroke alone. */
  readonly isOneWay: boolean;
}

/** One side's running current against its baseline; `cold`: the rise that unrecorded cold explains, null where none was told. */
interface JudgedSide {
  readonly side: string;
  readonly judged: Residual;
  readonly cold: number | null;
}

/** Takes a stroke into the charts of the sides that have a baseline. `residual`: of the stroke, or of the movement that it ends. */
export function updateRises(context: FindingContext, residual: FindingContext['residual']): SideRise[] {
  const allowance = sharedCold(context, residual, coldAllowance(context));
  const sides = context.state.room.sides.flatMap((side): JudgedSide[] => {
    const judged = residual(side, 'runningAmps');
    return judged === null ? [] : [{ side, judged, cold: judged.knowsWeather ? null : allowance }];
  });
  const seasonal = sharedOf(sides.flatMap((side) => [warmed(side), ...otherWayLately(context, side)]));
  const airs = sides.map((side) => airAt(context, side));
  return sides.map((side, place) => {
    const others = airs.filter((_, other) => other !== place);
    return updateRise(context, side, { seasonal, others });
  });
}

/** What cold adds to one side is no more than so many times what it adds to the other. A guess, no source. */
const COLD_APART = 2;

/** The cold that is allowed for: no more than every side bears out, within the doubt of one stroke, as they stand in the same air. */
function sharedCold(
  { state }: FindingContext,
  residual: FindingContext['residual'],
  allowance: number | null,
): number | null {
  if (allowance === null || state.room.sides.length < 2) return allowance;
  const most = state.room.sides.map((side) => {
    const judged = residual(side, 'runningAmps');
    if (judged === null) return Number.POSITIVE_INFINITY;
    const latest = [...state.load.sides[side].raw.slice(1 - LEAST_RUN), judged.rise];
    return COLD_APART * Math.max(0, median(latest) + judged.deviation);
  });
  return Math.min(allowance, ...most);
}

/** How the other direction of a side stood lately, with what was taken for the season in it; nothing where nobody knows. */
function otherWayLately({ state, direction }: FindingContext, { side }: JudgedSide): number[] {
  const load = state.load.sides[side];
  const back = latestOneWay(load, otherWay(direction));
  return back === null ? [] : [back + load.season];
}

/** Standard deviation of a median of so many values, as a part of one's over the root of their number: of the normal's. */
const MEDIAN_SPREAD = 1.25;

/** What one side's latest strokes, this one with them, tell of the air that all sides stand in. */
interface Air {
  /** The most that cold may have added to another side by this one's word, natural logarithm. */
  readonly risen: number;
  /** How far off that may be, a standard deviation. */
  readonly error: number;
}

function airAt({ state }: FindingContext, { side, judged }: JudgedSide): Air {
  const latest = [...state.load.sides[side].raw.slice(1 - LEAST_RUN), judged.rise];
  const noise = (MEDIAN_SPREAD * judged.noise) / Math.sqrt(latest.length);
  return {
    risen: COLD_APART * Math.max(0, median(latest), judged.rise),
    error: Math.hypot(noise, judged.uncertainty),
  };
}

/**
 * What unrecorded weather may do to a side, a standard deviation, as far as the `others` bear it out. Of what is known beforehand
 * and of what their strokes tell the better one counts for more, by their variances.
 */
function inTheSameAir(others: readonly Air[], unseen: number): number {
  const borneOut = others.map(({ risen, error }) =>
    Math.hypot(risen, (unseen * error) / Math.hypot(unseen, error)),
  );
  return Math.min(unseen, ...borneOut);
}

/** The rise that no cold explains. */
function warmed({ judged, cold }: JudgedSide): number {
  return judged.rise - (cold ?? 0);
}

/** What the sides show together: what all of them share, and what the others tell of the air. */
interface Shared {
  readonly seasonal: number;
  readonly others: readonly Air[];
}

function updateRise(context: FindingContext, of: JudgedSide, { seasonal, others }: Shared): SideRise {
  const { state, direction } = context;
  const { side, judged, cold } = of;
  const load = state.load.sides[side];
  const known = unseenWeather(judged, cold);
  const unseen = inTheSameAir(others, known);
  const zero = zeroLeft(state, [side], judged, (way) => latestOf(load, way));
  const { k, h } = loadDesign({ ...judged, zero }, RISE, inTheSameAir(others, SPELL * known));
  const rise = warmed(of) - load.season;
  if (load.sum < h / 2) load.season = followSeason(load.season, seasonal, SEASON_SPREADS * unseen);
  [load.sum, load.run] = chartStep(load.sum, load.run, Math.min(rise, k + h / 2), { k, h });
  load.deviation = judged.deviation;
  keepLatest(load.rises, rise);
  keepLatest(load.ways, direction);
  keepLatest(load.raw, judged.rise);
  if (!judged.knowsWeather) takeLasting(load.lasting, warmed(of), unseen, context.event.atMs);
  // A stroke that lies within its normal is no reason to call anybody, whatever those before it said.
  const isSo = rise > k && load.sum > h && load.run >= LEAST_RUN;
  const isOneWay = hasRisenOneWay(
    context,
    side,
    rise,
    loadDesign(judged, ONE_WAY, WEATHER_OF_ONE_WAY * unseen),
  );
  const lasts = isLasting(context, of, zero) && !isByZero(context, side);
  return {
    side,
    rise: lasts
      ? median(load.rises) + load.season
      : median(load.rises.slice(-Math.max(LEAST_RUN, Math.min(load.run, MOST_RUN)))),
    deviation: judged.deviation,
    hasRisen:
      !isByStanding(context, load) &&
      (isOneWay || lasts || (isSo && !isByPlace(context, load) && !isByZero(context, side))),
    lasts,
    isOneWay: isOneWay && isAsEverBack(load, direction),
  };
}

/** Whether a side whose weather nobody recorded has risen for longer than weather lasts, and this stroke confirms it. */
function isLasting({ state: { load, stay } }: FindingContext, of: JudgedSide, zero: number): boolean {
  const { side, judged } = of;
  const { lasting } = load.sides[side];
  return (
    !judged.knowsWeather && warmed(of) > RISE.kLeast && hasLasted(lasting, { ...judged, zero }, stay.strokes)
  );
}

/** Whether the ground that the coach stands on may be all of it. */
function isByPlace({ state: { stay }, conditions }: FindingContext, load: SideLoad): boolean {
  const most = conditions[1] === null ? FROST_RISE : PLACE_RISE;
  return (
    mayBeThePlace({ strokes: stay.strokes - stay.parts }, load.run) &&
    median(load.rises.slice(-load.run)) < most
  );
}

/** Whether a season's standing may be all of it. */
function isByStanding({ state: { stay } }: FindingContext, load: SideLoad): boolean {
  return mayBeStiffness(stay, load.run) && Math.max(...load.rises.slice(-load.run)) < STIFF_RISE;
}

/** Whether a zero that jumped, which no rest tells, may be all of it. */
function isByZero({ state, analysis }: FindingContext, side: string): boolean {
  return analysis.sides[side].offsetAmps === null && !isBothWays(state.usable, state.load.sides[side]);
}

/** What all of these share, as weather is shared by all sides and both ways: the one nearest to 0 where all have one sign, else 0. */
function sharedOf(rises: readonly number[]): number {
  if (rises.length === 0) return 0;
  return Math.max(0, Math.min(...rises)) + Math.min(0, Math.max(...rises));
}
