import { DAY_MS } from '../history.ts';
import { type CopperRead, type CopperScale, copperDegrees, copperScale } from './copper.ts';

/** The supply that values are brought to, for a system of 12 V; in proportion for another. */
export const REFERENCE_VOLTS = 12.6;
/** The temperature of the air that values are brought to, degrees Celsius. */
export const REFERENCE_C = 20;
const REFERENCE_NOMINAL_VOLTS = 12;

/** The supply that a system of 12 V would have instead, volts: what one volt does depends on the nominal voltage. */
export function asOfTwelveVolts(supplyVolts: number, nominalVolts: number): number {
  return (supplyVolts * REFERENCE_NOMINAL_VOLTS) / nominalVolts;
}

/**
 * The conditions of one side's stroke: mean supply, as of a 12 V system, less 12.6 V; ambient temperature less 20 °C
 * (both null where not recorded); the season by the calendar, degrees about the mean of the year; and what the motor's
 * copper last read (`copperReading`). A list and no object, because each reference stroke in the room's state keeps
 * one.
 */
export type Conditions = readonly [
  volts: number | null,
  degrees: number | null,
  season: number,
  copper: CopperRead | null,
];

/** The conditions that the record of a stroke holds; null where not recorded. */
interface RecordedConditions {
  readonly supplyVolts: number | null;
  readonly nominalVolts: number;
  readonly ambientC: number | null;
  readonly atMs: number;
}

/** A stroke's conditions by its record; `copper`: what its motor's copper last read. */
export function conditionsAt(
  { supplyVolts, nominalVolts, ambientC, atMs }: RecordedConditions,
  copper: CopperRead | null = null,
): Conditions {
  const volts = supplyVolts === null ? null : asOfTwelveVolts(supplyVolts, nominalVolts) - REFERENCE_VOLTS;
  return [volts, ambientC === null ? null : ambientC - REFERENCE_C, seasonDegrees(atMs), copper];
}

const YEAR_MS = 365.25 * DAY_MS;
/**
 * The coldest day of the northern year, counted from the year's begin: a month after the shortest. The southern year is
 * its mirror.
 */
const COLDEST_DAYS = 20;
/**
 * Half the swing of the mean temperature over a temperate year. A room's own slope adapts to how much of it there is.
 */
const HALF_SWING_C = 10;

/**
 * The season of a temperate northern year, degrees about its mean. Where a coach winters elsewhere its slope comes out
 * smaller.
 */
function seasonDegrees(atMs: number): number {
  const year = (atMs - COLDEST_DAYS * DAY_MS) / YEAR_MS;
  return Math.round(-100 * HALF_SWING_C * Math.cos(2 * Math.PI * year)) / 100;
}

/** Where a normal takes the temperature from: the recorded air, the motor's copper, or the season. */
export type Weather =
  | { readonly by: 'ambient' }
  | { readonly by: 'season' }
  | { readonly by: 'copper'; readonly scale: CopperScale };

/** The recorded temperature of the air. */
export const BY_AMBIENT: Weather = { by: 'ambient' };
/** The time of the year. */
export const BY_SEASON: Weather = { by: 'season' };

/**
 * Where a normal made of these strokes takes the temperature from: the air if any of them recorded it, else the motor's
 * copper if that was read, else the season, because a room that draws more in the cold does so every winter.
 */
export function weatherOf(reference: readonly Conditions[]): Weather {
  if (reference.some(([, degrees]) => degrees !== null)) return BY_AMBIENT;
  const scale = copperScale(reference.map(([, , , copper]) => copper));
  return scale === null ? BY_SEASON : { by: 'copper', scale };
}

/** The temperature of a stroke in degrees, counted from the origin of its normal's `weather`; null: not known. */
export function degreesOf([, degrees, season, copper]: Conditions, weather: Weather): number | null {
  switch (weather.by) {
    case 'ambient':
      return degrees;
    case 'season':
      return season;
    case 'copper':
      return copperDegrees(weather.scale, copper);
  }
}

/** Regressors of a stroke: 1, and volts and degrees from the reference, 0 for what was not recorded. */
export function regressors(conditions: Conditions, weather: Weather): number[] {
  return [1, conditions[0] ?? 0, degreesOf(conditions, weather) ?? 0];
}

/** The index of the variance of the slope per volt in a covariance of the `regressors`, row after row. */
export const PER_VOLT_VARIANCE = 4;
/** The same for the slope per degree. */
export const PER_DEGREE_VARIANCE = 8;
