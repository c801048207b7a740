import type { Limits } from '../history.ts';
import { isBetweenSides, MEASURE_INDEX, type MeasureName } from '../measures.ts';
import { predict } from '../statistics/shrunkRegression.ts';
import { beyondQuantile } from './beyondQuantile.ts';
import { type Channel, isReady } from './channel.ts';
import { degreesOf, regressors } from './conditions.ts';
import { weatherFor } from './fitMeasure.ts';
import { type OwnLimit, strokesTold } from './ownLimit.ts';
import type { Reading } from './reading.ts';
import { fromScale } from './scale.ts';
import { unrecordedSpread } from './unrecordedSpread.ts';

/** A fall within this many standard deviations of what unrecorded weather may do is no new normal. */
export const SEASON_SPREADS = 1.5;
/**
 * What the ground that a coach stands on adds on some stays, a standard deviation on the measure's scale. A reference
 * of few stays knows little of it, and a healthy stroke on other ground is not to lie beyond the limits. The ground
 * also decides which side stalls first: that one stalls alone, on a supply that sags less, draws more, and seems to
 * make more turns. Guesses, no source; the charts do not count with them.
 */
const GROUND: Readonly<Partial<Record<MeasureName, number>>> = { share: 0.006, lagS: 0.05, turnsAs: 0.025 };

/**
 * What the ground adds shows in a room's own strokes, and so in its own limit, the more stays there were. What is known
 * beforehand counts beside them like this many strokes of a direction: some forty stays. A guess, no source.
 */
const GROUND_STROKES = 120;

/** One measure of one stroke against its baseline, on the measure's scale. */
export interface Residual {
  readonly measure: MeasureName;
  /** Value less what the baseline expects, benign drift included. */
  readonly residual: number;
  /**
   * Value less the reference's own expectation. Upward drift is not excused; downward drift is followed as far as it is
   * more than an unrecorded season explains.
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
  /** What weather adds according to this motor's copper alone: a wrong clamp makes that wrong too. */
  readonly byCopper: number;
  /** The `zero` of the `Reading`. */
  readonly zero: number;
  /** What the baseline expects, and the value brought to 12.6 V and 20 °C, in the measure's own unit. */
  readonly expected: number;
  readonly adjusted: number;
  /**
   * The limit set beforehand, before the room's own strokes tell, and whether this residual lies beyond it: for
   * learning and findings.
   */
  readonly limit: number;
  readonly beyond: boolean;
  /**
   * The limit that the room's own strokes tell (`ownLimit.ts`), and whether this residual lies beyond it: for people.
   */
  readonly ownLimit: number;
  readonly beyondOwn: boolean;
}

/** Holds a reading against its baseline. Null while the channel is learning, or where this measure has no baseline. */
export function judgeMeasure(channel: Channel, reading: Reading): Residual | null {
  const { measure, value, conditions, zero } = reading;
  const fit = channel.fits[MEASURE_INDEX[measure]];
  if (!isReady(channel) || fit === null) return null;
  const weather = weatherFor(channel, measure);
  const row = regressors(conditions, weather);
  const { value: reference, standardDeviation } = predict(fit, row);
  const unrecorded = unrecordedSpread(channel, reading, weather);
  const deviation = Math.hypot(standardDeviation, unrecorded, zero);
  const level = channel.level[MEASURE_INDEX[measure]];
  const fromReference = value - reference;
  const residual = fromReference - level;
  const own = channel.ownLimits[MEASURE_INDEX[measure]];
  const quantile = beyondQuantile(fit.degreesOfFreedom);
  const usual = Math.hypot(standardDeviation, unrecorded, GROUND[measure] ?? 0);
  const limit = quantile * Math.hypot(usual, zero);
  // An unseen zero comes with some strokes only, so that the others do not tell it.
  const ownLimit = quantile * Math.hypot(own.factor * usual, zero, groundBeside(own, measure));
  const followed = isBetweenSides(measure) ? 0 : Math.min(0, level + SEASON_SPREADS * unrecorded);
  return {
    measure,
    residual,
    fromReference,
    rise: fromReference - followed,
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
    ownLimit,
    beyondOwn: Math.abs(residual) > ownLimit,
  };
}

/**
 * What the ground may add beyond what the room's own strokes have shown yet, a standard deviation on the measure's
 * scale.
 */
function groundBeside(own: OwnLimit, measure: MeasureName): number {
  const known = GROUND[measure] ?? 0;
  return known === 0 ? 0 : known * Math.sqrt(GROUND_STROKES / (GROUND_STROKES + strokesTold(own)));
}

/**
 * The level that a rise of a measure is counted from, in the measure's own unit, under the conditions of its limits:
 * that of the reference, or a lower one that was followed since. A rise that was followed does not count, or a line a
 * fifth above the level would move away as the rise goes on. Null while learning.
 */
export function normalOfMeasure(channel: Channel, measure: MeasureName): number | null {
  const index = MEASURE_INDEX[measure];
  const fit = channel.fits[index];
  if (!isReady(channel) || fit === null) return null;
  return fromScale(measure, predict(fit, [1, 0, 0]).value + Math.min(0, channel.level[index]));
}

/**
 * The single-stroke limits of a measure at 12.6 V and 20 °C, or where the temperature was not recorded at the year's
 * mean or the motor's usual copper. They lie as far from the centre as those of the latest strokes did under their own
 * conditions. Null while learning.
 */
export function limitsOfMeasure(channel: Channel, measure: MeasureName): Limits | null {
  const index = MEASURE_INDEX[measure];
  const fit = channel.fits[index];
  if (!isReady(channel) || fit === null) return null;
  const { value, standardDeviation } = predict(fit, [1, 0, 0]);
  const centre = value + channel.level[index];
  const own = channel.ownLimits[index];
  const first = () => {
    const spread = own.factor * Math.hypot(standardDeviation, GROUND[measure] ?? 0);
    return beyondQuantile(fit.degreesOfFreedom) * Math.hypot(spread, groundBeside(own, measure));
  };
  const half = own.usual ?? first();
  return {
    lower: fromScale(measure, centre - half),
    centre: fromScale(measure, centre),
    upper: fromScale(measure, centre + half),
  };
}
