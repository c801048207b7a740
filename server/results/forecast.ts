import { strokesToLine } from '../../analysis/forecast/strokesToLine.ts';
import type { Limits } from '../../analysis/history.ts';
import { MEASURE_NAMES, type MeasureName } from '../../analysis/measures.ts';
import type { Queries } from '../database/openDatabase.ts';
import type { Trend } from '../schemas/results.ts';
import type { TrendPlace, TrendQuestion } from './trendPoints.ts';

/** A year of one direction's strokes tells a trend; an older one may have ended. */
const STROKES = 60;
/** The service line: a fifth above the room's normal, where a rising draw is no longer only watched. */
const SERVICE_RISE = 0.2;
/** Measures that wear moves up. */
const RISING: ReadonlySet<MeasureName> = new Set(['runningAmps', 'runningAmpsP90', 'chargeAs']);

/** The measure's latest adjusted values since the last work, oldest first; none of a measure that wear does not move. */
export async function latestLevels(
  pool: Queries,
  { accountId, roomId, side }: TrendPlace,
  { direction, measure }: TrendQuestion,
): Promise<number[]> {
  if (!RISING.has(measure)) return [];
  const place = MEASURE_NAMES.indexOf(measure) + 1;
  const { rows } = await pool.query<{ adjusted: number }>({
    name: `forecast-${place}`,
    text: `
      select adjusted[${place}] as adjusted from measures
      where account_id = $1 and room_id = $2 and side = $3 and direction = $4 and adjusted[${place}] > 0
        and placed_at >= coalesce(
          (select max(at) from services where account_id = $1 and room_id = $2), '-infinity')
      order by placed_at desc, stroke_id desc limit ${STROKES}`,
    values: [accountId, roomId, side, direction],
  });
  return rows.reverse().map(({ adjusted }) => adjusted);
}

/** How many strokes of this direction until the measure reaches its service line; null while no trend says so. */
export function forecastFrom(latest: readonly number[], { centre }: Limits): Trend['forecast'] {
  const levels = latest.map((adjusted) => Math.log(adjusted / centre));
  const forecast = strokesToLine(levels, Math.log1p(SERVICE_RISE));
  if (forecast === null) return null;
  const rounded = (value: number) => Math.round(10 * value) / 10;
  return {
    serviceLine: centre * (1 + SERVICE_RISE),
    strokes: rounded(forecast.strokes),
    lower: rounded(forecast.lower),
    upper: forecast.upper === null ? null : rounded(forecast.upper),
    coverage: 0.8,
    percentPerStroke: Math.round(10_000 * Math.expm1(forecast.perStroke)) / 100,
  };
}
