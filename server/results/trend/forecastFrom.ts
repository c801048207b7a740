import { strokesToLine } from '../../../analysis/forecast/strokesToLine.ts';
import type { MeasureName } from '../../../analysis/measures.ts';
import type { Trend } from '../../schemas/results.ts';

/** So many strokes of one direction hold a slow rise and the quiet stretch before it, from which it is told apart. */
export const LEVELS = 120;
/** The service line: a fifth above what a rise is counted from, where a rising draw is no longer only watched. */
const SERVICE_RISE = 0.2;
/** Measures that wear moves up. */
export const RISING: ReadonlySet<MeasureName> = new Set(['runningAmps', 'runningAmpsP90', 'chargeAs']);

/** How many strokes of this direction until the measure reaches its service line; null while no trend says so. */
export function forecastFrom(latest: readonly number[], normal: number): Trend['forecast'] {
  const levels = latest.map((adjusted) => Math.log(adjusted / normal));
  const forecast = strokesToLine(levels, Math.log1p(SERVICE_RISE));
  if (forecast === null) return null;
  const rounded = (value: number) => Math.round(10 * value) / 10;
  return {
    serviceLine: normal * (1 + SERVICE_RISE),
    strokes: rounded(forecast.strokes),
    lower: rounded(forecast.lower),
    upper: forecast.upper === null ? null : rounded(forecast.upper),
    coverage: 0.8,
    percentPerStroke: Math.round(10_000 * Math.expm1(forecast.perStroke)) / 100,
  };
}
