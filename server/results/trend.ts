import type { Kysely } from 'kysely';
import { MEASURE_NAMES, MEASURES, type MeasureName } from '../../analysis/measures.ts';
import type { Direction } from '../../analysis/trace.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scope.ts';
import type { Queries } from '../database/openDatabase.ts';
import { invalidField } from '../problems.ts';
import type { Trend } from '../schemas/results.ts';
import { findRoom } from './findRoom.ts';
import { forecastOf } from './forecastOf.ts';
import { limitsOf, roomLimits } from './roomLimits.ts';
import { servicesBetween } from './servicesBetween.ts';

export interface TrendQuestion {
  readonly measure: MeasureName;
  readonly direction: Direction;
  readonly side?: string;
  readonly from?: string;
  readonly to?: string;
}

/**
 * The trend of one measure as JSON text of the `Trend` schema. A room has tens of thousands of strokes after some
 * years: the points are put together by the database and pass through untouched, which takes a third of the time of
 * making an object, a date and a check for each.
 */
export async function trendText(
  db: Kysely<Tables>,
  pool: Queries,
  accountId: AccountInScope,
  roomId: string,
  question: TrendQuestion,
): Promise<string> {
  const room = await findRoom(db, accountId, roomId);
  const side = sideOf(room.sides, question);
  const [points, allLimits, services] = await Promise.all([
    pointsText(pool, accountId, roomId, side, question),
    roomLimits(db, accountId, roomId),
    servicesBetween(db, accountId, roomId, question.from, question.to),
  ]);
  const { measure, direction } = question;
  const limits = limitsOf(allLimits, { measure, side, direction });
  const forecast = await forecastOf(pool, { accountId, roomId, side, direction, measure }, limits);
  const rest: Omit<Trend, 'points'> = { limits, services, forecast };
  return `{"points":${points},${JSON.stringify(rest).slice(1)}`;
}

/** A measure of the whole stroke stands beside every side. */
function sideOf(sides: readonly string[], { measure, side }: TrendQuestion): string {
  if (side !== undefined) {
    if (sides.includes(side)) return side;
    throw invalidField('/side', `The room has no such side. It has: ${sides.join(', ')}.`);
  }
  const ofStroke = MEASURES.some(({ name, of }) => name === measure && of === 'stroke');
  if (sides.length === 1 || ofStroke) return sides[0];
  throw invalidField('/side', `Say which side: ${sides.join(', ')}.`);
}

async function pointsText(
  pool: Queries,
  accountId: AccountInScope,
  roomId: string,
  side: string,
  { measure, direction, from, to }: TrendQuestion,
): Promise<string> {
  // Postgres counts from 1. The name has been checked against the registry.
  const place = MEASURE_NAMES.indexOf(measure) + 1;
  const { rows } = await pool.query<{ points: string | null }>({
    name: `trend-${place}`,
    text: `
      select string_agg(
        '{"strokeId":"' || stroke_id || '","at":"' ||
        to_char(placed_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') ||
        '","value":' || value ||
        ',"expected":' || coalesce(expected::text, 'null') ||
        ',"adjusted":' || coalesce(adjusted::text, 'null') ||
        ',"beyond":' || coalesce(beyond::text, 'null') || '}', ','
      ) as points
      from (
        select stroke_id, placed_at, value[${place}] as value, expected[${place}] as expected,
          adjusted[${place}] as adjusted, beyond[${place}] as beyond
        from measures
        where account_id = $1 and room_id = $2 and side = $3 and direction = $4
          and placed_at >= coalesce($5::timestamptz, '-infinity')
          and placed_at <= coalesce($6::timestamptz, 'infinity')
          and value[${place}] is not null
        -- Here the primary key gives the order; told to the aggregate, it would sort the finished texts.
        order by placed_at, stroke_id
      ) points`,
    values: [accountId, roomId, side, direction, from ?? null, to ?? null],
  });
  return `[${rows[0].points ?? ''}]`;
}
