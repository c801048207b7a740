export const REFERENCE_VOLTS = 12.6;
export const REFERENCE_C = 20;

/**
 * What a stroke was made under: mean supply less 12.6 V and ambient less 20 °C, null where not recorded; and the season
 * by the calendar, degrees about the mean of the year.
 */
export type Conditions = readonly [volts: number | null, degrees: number | null, season: number];

export function conditionsAt(supplyVolts: number | null, ambientC: number | null, atMs: number): Conditions {
  const volts = supplyVolts === null ? null : supplyVolts - REFERENCE_VOLTS;
  return [volts, ambientC === null ? null : ambientC - REFERENCE_C, seasonDegrees(atMs)];
}

const YEAR_MS = 365.25 * 86_400_000;
/** The coldest time of the northern year lags its shortest day by a month; the southern one is its mirror. */
const COLDEST_DAYS = 20;
/** Half the swing of a temperate year's mean temperature; a room's own slope says how much of it there is. */
const HALF_SWING_C = 10;

/** A temperate northern year, degrees about its mean; where a coach winters elsewhere, its slope comes out smaller. */
function seasonDegrees(atMs: number): number {
  const year = (atMs - COLDEST_DAYS * 86_400_000) / YEAR_MS;
  return Math.round(-100 * HALF_SWING_C * Math.cos(2 * Math.PI * year)) / 100;
}

/**
 * Whether the season stands for the temperature: where none of the strokes that a normal is made of recorded it. A room
 * that draws more in the cold does so every winter.
 */
export function goesBySeason(reference: readonly Conditions[]): boolean {
  return reference.every(([, degrees]) => degrees === null);
}

/** Regressors of a stroke: 1, volts and degrees from the reference; what was not recorded counts as at it. */
export function regressors([volts, degrees, season]: Conditions, bySeason: boolean): number[] {
  return [1, volts ?? 0, bySeason ? season : (degrees ?? 0)];
}
