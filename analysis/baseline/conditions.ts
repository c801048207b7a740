import { DAY_MS } from '../history.ts';
import { type CopperRead, type CopperScale, copperDegrees, copperScale } from './copper.ts';

/** What values are brought to, of a system of 12 V; of another as much higher or lower. */
export const REFERENCE_VOLTS = 12.6;
/** Of the ambient air, degrees Celsius. */
export const REFERENCE_C = 20;
const REFERENCE_NOMINAL_VOLTS = 12;

/** The supply of a system as one of 12 V would have it: what a volt does depends on of how many it is one. */
export function asOfTwelveVolts(supplyVolts: number, nominalVolts: number): number {
  return (supplyVolts * REFERENCE_NOMINAL_VOLTS) / nominalVolts;
}

/**
 * What one side's stroke was made under: mean supply, as of a 12 V system, less 12.6 V, and ambient less 20 °C, null where not
 * recorded; the season by the calendar, degrees about the mean of the year; and what the motor's copper last read
 * (`copperReading`). A list, since each reference stroke of the room's state keeps one.
 */
export type Conditions = readonly [
  volts: number | null,
  degrees: number | null,
  season: number,
  copper: CopperRead | null,
];

/** What the record of a stroke says of its conditions; null where nobody recorded it. */
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
/** The coldest time of the northern year lags its shortest day by a month; the southern one is its mirror. */
const COLDEST_DAYS = 20;
/** Half the swing of a temperate year's mean temperature; a room's own slope says how much of it there is. */
const HALF_SWING_C = 10;

/** A temperate northern year, degrees about its mean; where a coach winters elsewhere, its slope comes out smaller. */
function seasonDegrees(atMs: number): number {
  const year = (atMs - COLDEST_DAYS * DAY_MS) / YEAR_MS;
  return Math.round(-100 * HALF_SWING_C * Math.cos(2 * Math.PI * year)) / 100;
}

/** What a normal takes the temperature from: what was recorded, the motor's copper, or the season. */
export type Weather =
  | { readonly by: 'ambient' }
  | { readonly by: 'season' }
  | { readonly by: 'copper'; readonly scale: CopperScale };

/** The recorded temperature of the air. */
export const BY_AMBIENT: Weather = { by: 'ambient' };
/** The time of the year. */
export const BY_SEASON: Weather = { by: 'season' };

/**
 * What stands for the temperature where none of the strokes that a normal is made of recorded it: the motor's copper where
 * it was read, else the season. A room that draws more in the cold does so every winter.
 */
export function weatherOf(reference: readonly Conditions[]): Weather {
  if (reference.some(([, degrees]) => degrees !== null)) return BY_AMBIENT;
  const scale = copperScale(reference.map(([, , , copper]) => copper));
  return scale === null ? BY_SEASON : { by: 'copper', scale };
}

/** Degrees that a stroke was made at, from where its normal counts them; null: not known. */
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

/** Regressors of a stroke: 1, volts and degrees from the reference; what was not recorded counts as at it (0). */
export function regressors(conditions: Conditions, weather: Weather): number[] {
  return [1, conditions[0] ?? 0, degreesOf(conditions, weather) ?? 0];
}

/** Where a covariance of what belongs to the `regressors`, row after row, holds the variances of the two slopes. */
export const PER_VOLT_VARIANCE = 4;
/** The same of the slope per degree. */
export const PER_DEGREE_VARIANCE = 8;
