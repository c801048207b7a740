import { DAY_MS } from '../history.ts';
import { MEASURE_INDEX } from '../measures.ts';
import type { Channel, Fit } from './channel.ts';
import { type Conditions, degreesOf, PER_DEGREE_VARIANCE, type Weather } from './conditions.ts';
import { type MeasurePrior, PRIORS, UNRECORDED, UNSEASONABLE_C, WEATHER_DAYS } from './priors.ts';
import type { Reading } from './reading.ts';

/**
 * What cold adds by the copper's word may be off by so much of what it does as a rule: readings that are a little off make
 * a slope too small. A guess, no source.
 */
const COPPER_LEAVES = 0.25;

/**
 * What an unrecorded supply or temperature adds to a reading, a standard deviation on the measure's scale; `weather`: what the
 * measure's normal takes the temperature from. Where a channel never has it, the season stands for the temperature,
 * and only what the weather since the reference was made is off it is left; the supply is part of the spread. Where the
 * copper stands for it, a stroke whose copper was not read may have been made in any weather.
 */
export function unrecordedSpread(
  channel: Channel,
  { measure, conditions, atMs }: Pick<Reading, 'measure' | 'conditions' | 'atMs'>,
  weather: Weather,
): number {
  const { perVolt, perDegree } = PRIORS[measure];
  const days = Math.max(0, atMs - channel.learntAtMs) / DAY_MS;
  const unseasonable = UNSEASONABLE_C * Math.min(1, days / WEATHER_DAYS);
  const knowsVolts = conditions[0] !== null || channel.conditions.every(([volts]) => volts === null);
  const volts = knowsVolts ? 0 : UNRECORDED[0];
  const degrees = unknownDegrees(conditions, weather, unseasonable);
  const colder = weather.by === 'copper' ? Math.max(0, -(degreesOf(conditions, weather) ?? 0)) : 0;
  return Math.hypot(
    volts * Math.hypot(perVolt.mean, perVolt.spread),
    degrees * ofOneDegree(channel.fits[MEASURE_INDEX[measure]], weather, perDegree),
    colder * COPPER_LEAVES * Math.abs(perDegree.mean),
  );
}

/**
 * What a degree does, either way, on the measure's scale. Where the season stands for the temperature, a room that plainly goes
 * with it is stiff: it follows a cold week as it follows the winter.
 */
function ofOneDegree(fit: Fit | null, weather: Weather, perDegree: MeasurePrior['perDegree']): number {
  const asARule = Math.hypot(perDegree.mean, perDegree.spread);
  if (fit === null || weather.by !== 'season') return asARule;
  return Math.max(asARule, Math.hypot(fit.coefficients[2], Math.sqrt(fit.covariance[PER_DEGREE_VARIANCE])));
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
