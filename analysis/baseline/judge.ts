import { DAY_MS, type Limits } from '../history.ts';
import { isBetweenSides, MEASURE_NAMES, type MeasureName } from '../measures.ts';
import { predict } from '../statistics/shrunkRegression.ts';
import { studentTUpperQuantile } from '../statistics/studentT.ts';
import { type Channel, type Fit, isReady } from './channel.ts';
import { type Conditions, degreesOf, regressors, type Weather } from './conditions.ts';
import { weatherFor } from './fitMeasure.ts';
import { PRIORS, UNRECORDED, UNSEASONABLE_C, WEATHER_DAYS } from './priors.ts';
import { fromScale, toScale } from './scale.ts';

/** About one healthy stroke in 400 lies outside the single-stroke limits, above and below together. */
const BEYOND_PROBABILITY = 1 / 400;
/** What weather that nobody recorded can do, in standard deviations: a fall within it is no new normal. */
export const SEASON_SPREADS = 1.5;
/**
 * What the ground that a coach stands on adds to some stays only, on the measure's scale: a reference of few stays knows
 * little of it, and a healthy stroke there is not beyond its limits. It decides which side stalls first, too: alone, on a
 * supply that sags less, it draws more, and its turns seem more. Guesses, no source; no chart counts with them.
 */
const GROUND: Readonly<Partial<Record<MeasureName, number>>> = { share: 0.006, lagS: 0.05, turnsAs: 0.025 };
/**
 * What cold adds by the copper's word may be off by so much of what it does as a rule: readings that are a little off make
 * a slope too small. A guess, no source.
 */
const COPPER_LEAVES = 0.25;
/**
 * How fast the level follows a change that is no fault, as a part of the difference: either way, and down once the latest
 * strokes ran easier; and how far up it may ever go, in standard deviations. Guesses, no source.
 */
const FOLLOW = 0.04;
const FOLLOW_DOWN = 0.25;
const MOST_FOLLOWED_UP = 2;
/** The latest strokes: a moving mean of their residuals over about four, and from how many deviations on they run easier. */
const RECENT_PART = 0.25;
const EASIER_SIGMAS = 0.8;

/** One measure of one stroke against its baseline, on the measure's scale. */
export interface Residual {
  readonly measure: MeasureName;
  /** Value less what the baseline expects, benign drift included. */
  readonly residual: number;
  /**
   * Value less the reference's own expectation: upward drift is not excused, downward drift is followed as far as no
   * unrecorded season explains it.
   */
  readonly rise: number;
  /** Value less the reference's own expectation, whatever has been followed since. */
  readonly fromReference: number;
  /** Standard deviation of a healthy stroke's residual here: noise and uncertainty together. */
  readonly deviation: number;
  /** The part that differs from stroke to stroke. */
  readonly noise: number;
  /** The part that strokes under like conditions share: the baseline's own uncertainty. */
  readonly uncertainty: number;
  /** What a supply or temperature that was not recorded may add. */
  readonly unrecorded: number;
  /** Whether the temperature is known: recorded, or read off the motor's copper. */
  readonly knowsWeather: boolean;
  /** What this motor's copper alone says that weather adds: a clamp that lies makes it a lie too. */
  readonly byCopper: number;
  /** What a zero that was not seen at rest may add, and the steps of a coarse sensor. */
  readonly zero: number;
  readonly expected: number;
  readonly adjusted: number;
  /** How far a residual may lie either way, and whether this one lies further. */
  readonly limit: number;
  readonly beyond: boolean;
}

/**
 * One measure of a stroke, `value` on the measure's scale, against its baseline. Null while the channel is learning, or where
 * this measure has no baseline. `index`: of MEASURES; `zero`: see `Residual`.
 */
export function judgeMeasure(
  channel: Channel,
  index: number,
  conditions: Conditions,
  atMs: number,
  value: number,
  zero = 0,
): Residual | null {
  const fit = channel.fits[index];
  if (!isReady(channel) || fit === null) return null;
  const measure = MEASURE_NAMES[index];
  const weather = weatherFor(channel, measure);
  const row = regressors(conditions, weather);
  const { value: reference, standardDeviation } = predict(fit, row);
  const unrecorded = unrecordedSpread(channel, measure, conditions, atMs);
  const deviation = Math.hypot(standardDeviation, unrecorded, zero);
  const level = channel.level[index];
  const residual = value - reference - level;
  const limit = beyondQuantile(fit) * Math.hypot(deviation, GROUND[measure] ?? 0);
  return {
    measure,
    residual,
    fromReference: value - reference,
    rise:
      value - reference - (isBetweenSides(measure) ? 0 : Math.min(0, level + SEASON_SPREADS * unrecorded)),
    deviation,
    noise: fit.scale,
    uncertainty: Math.sqrt(Math.max(0, standardDeviation ** 2 - fit.scale ** 2)),
    unrecorded,
    knowsWeather: weather.by !== 'season' && degreesOf(conditions, weather) !== null,
    byCopper: weather.by === 'copper' && conditions[3]?.isShared !== true ? row[2] * fit.coefficients[2] : 0,
    zero,
    expected: fromScale(measure, reference + level),
    adjusted: fromScale(measure, value - row[1] * fit.coefficients[1] - row[2] * fit.coefficients[2]),
    limit,
    beyond: Math.abs(residual) > limit,
  };
}

/**
 * A measure's value brought to 12.6 V and 20 °C by what supply and temperature do as a rule, for as long as a room's own
 * normal does not tell; what was not recorded counts as being there. In the measure's own unit.
 */
export function adjustedAsARule(measure: MeasureName, [volts, degrees]: Conditions, value: number): number {
  const { perVolt, perDegree } = PRIORS[measure];
  const scaled = toScale(measure, value);
  return fromScale(measure, scaled - (volts ?? 0) * perVolt.mean - (degrees ?? 0) * perDegree.mean);
}

/**
 * What an unrecorded supply or temperature adds. Where a channel never has it, the season stands for the temperature,
 * and only what the weather since the reference was made is off it is left; the supply is part of the spread. Where the
 * copper stands for it, a stroke whose copper was not read may have been made in any weather.
 */
function unrecordedSpread(
  channel: Channel,
  measure: MeasureName,
  conditions: Conditions,
  atMs: number,
): number {
  const { perVolt, perDegree } = PRIORS[measure];
  const weather = weatherFor(channel, measure);
  const days = Math.max(0, atMs - channel.learntAtMs) / DAY_MS;
  const unseasonable = UNSEASONABLE_C * Math.min(1, days / WEATHER_DAYS);
  const knowsVolts = conditions[0] !== null || channel.conditions.every(([volts]) => volts === null);
  const volts = knowsVolts ? 0 : UNRECORDED[0];
  const degrees = unknownDegrees(conditions, weather, unseasonable);
  const colder = weather.by === 'copper' ? Math.max(0, -(degreesOf(conditions, weather) ?? 0)) : 0;
  return Math.hypot(
    volts * Math.hypot(perVolt.mean, perVolt.spread),
    degrees * Math.hypot(perDegree.mean, perDegree.spread),
    colder * COPPER_LEAVES * Math.abs(perDegree.mean),
  );
}

/** How far the temperature may be from what the normal counts with, degrees. */
function unknownDegrees(conditions: Conditions, weather: Weather, unseasonable: number): number {
  const [, degrees, , copper] = conditions;
  switch (weather.by) {
    case 'ambient':
      return degrees === null ? UNRECORDED[1] : 0;
    case 'season':
      return degrees === null ? unseasonable : 0;
    case 'copper':
      return copper === null
        ? UNRECORDED[1]
        : Math.min(UNRECORDED[1], (UNSEASONABLE_C * copper.days) / WEATHER_DAYS);
  }
}

/**
 * Real strokes have fatter tails than the normal distribution: on the public test rig, the only recorded ones at hand,
 * one healthy stroke in 25 runs four to thirteen per cent harder than the rest. Student's t with this many degrees of
 * freedom stands for them, however many strokes the spread is known from (K. L. Lange, R. J. A. Little, J. M. G.
 * Taylor, 1989, Robust statistical modeling using the t distribution).
 */
const MOST_DEGREES = 8;

/** Student's t for the strokes that the spread was estimated from (W. S. Gosset, 1908), and for the tails of strokes. */
function beyondQuantile(fit: Fit): number {
  return studentTUpperQuantile(BEYOND_PROBABILITY / 2, Math.min(MOST_DEGREES, fit.degreesOfFreedom));
}

/**
 * Lets the level follow a drift that is no fault: slowly either way, faster downwards once several strokes in a row
 * ran easier than the reference. A room that runs easier than it did is a new normal at once; one that runs harder
 * is believed only little by little and never further than two standard deviations, or a slow fault would be
 * swallowed. Strokes beyond the limits move nothing.
 */
export function follow(channel: Channel, index: number, judged: Residual): void {
  if (judged.beyond) return;
  const fit = channel.fits[index];
  if (fit === null) return;
  const { residual } = judged;
  channel.recent[index] += RECENT_PART * (residual - channel.recent[index]);
  let level = channel.level[index] + FOLLOW * residual;
  // Of what compares the sides neither way is easier.
  const symmetric = isBetweenSides(judged.measure);
  if (!symmetric && channel.recent[index] < -EASIER_SIGMAS * fit.scale) {
    level += FOLLOW_DOWN * channel.recent[index];
    channel.recent[index] *= 1 - FOLLOW_DOWN;
  }
  const most = MOST_FOLLOWED_UP * fit.scale;
  channel.level[index] = symmetric ? Math.max(-most, Math.min(most, level)) : Math.min(most, level);
}

/**
 * The single-stroke limits of a measure at 12.6 V and 20 °C, or at what stands for that where nobody recorded it: the year's
 * mean, the motor's usual copper. Null while learning.
 */
export function limitsOfMeasure(channel: Channel, index: number): Limits | null {
  const fit = channel.fits[index];
  if (!isReady(channel) || fit === null) return null;
  const measure = MEASURE_NAMES[index];
  const { value, standardDeviation } = predict(fit, [1, 0, 0]);
  const centre = value + channel.level[index];
  const half = beyondQuantile(fit) * Math.hypot(standardDeviation, GROUND[measure] ?? 0);
  return {
    lower: fromScale(measure, centre - half),
    centre: fromScale(measure, centre),
    upper: fromScale(measure, centre + half),
  };
}
