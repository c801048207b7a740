import { MEASURE_NAMES } from '../../analysis/measures.ts';
import type { AccountInScope } from '../access/scope.ts';
import type { Queries } from '../database/openDatabase.ts';
import type { Trend } from '../schemas/results.ts';
import type { TrendQuestion } from './trend.ts';

interface Place {
  readonly accountId: AccountInScope;
  readonly roomId: string;
  readonly side: string;
}

interface TrendPoints {
  /** A JSON array of the points, in order of time. */
  readonly text: string;
  readonly thinned: Trend['thinned'];
}

/** The newest are kept whole, for the table beside the picture. */
const KEPT_WHOLE = 200;

/**
 * The points of a trend as JSON text. Where there are more than `points` asked for, the lowest and the highest of each
 * stretch stay and the newest, and how many there were is told.
 */
export async function trendPoints(
  pool: Queries,
  { accountId, roomId, side }: Place,
  { measure, direction, from, to, points }: TrendQuestion,
): Promise<TrendPoints> {
  // Postgres counts from 1. The name has been checked against the registry.
  const place = MEASURE_NAMES.indexOf(measure) + 1;
  const values = [accountId, roomId, side, direction, from ?? null, to ?? null];
  const thin = points !== undefined;
  const { rows } = await pool.query<{ points: string | null; total?: number; beyond?: number }>({
    name: `trend-${place}${thin ? '-thin' : ''}`,
    text: thin ? thinText(place) : `select ${AS_JSON} as points from (${allText(place)}) points`,
    values: thin ? [...values, points] : values,
  });
  const [{ points: text, total, beyond }] = rows;
  const thinned = points !== undefined && total !== undefined && total > points;
  return { text: `[${text ?? ''}]`, thinned: thinned ? { points: total, beyond: beyond ?? 0 } : undefined };
}

const AS_JSON = `string_agg(
  '{"strokeId":"' || stroke_id || '","at":"' ||
  to_char(placed_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') ||
  '","value":' || value ||
  ',"expected":' || coalesce(expected::text, 'null') ||
  ',"adjusted":' || coalesce(adjusted::text, 'null') ||
  ',"beyond":' || coalesce(beyond::text, 'null') || '}', ','
)`;

function allText(place: number): string {
  return `
    select stroke_id, placed_at, value[${place}] as value, expected[${place}] as expected,
      adjusted[${place}] as adjusted, beyond[${place}] as beyond
    from measures
    where account_id = $1 and room_id = $2 and side = $3 and direction = $4
      and placed_at >= coalesce($5::timestamptz, '-infinity')
      and placed_at <= coalesce($6::timestamptz, 'infinity')
      and value[${place}] is not null
    -- Here the primary key gives the order; told to the aggregate, it would sort the finished texts.
    order by placed_at, stroke_id`;
}

/** $7 points: half as many stretches, with two points of each. */
function thinText(place: number): string {
  return `
    with own as (
      select *, coalesce(adjusted, value) as shown, row_number() over (order by placed_at, stroke_id) as n,
        count(*) over () as total, count(*) filter (where beyond) over () as beyond_total
      from (${allText(place)}) points
    ), stretched as (
      select *, (n - 1) * greatest(1, $7::integer / 2) / total as stretch from own
    ), marked as (
      select *, row_number() over (partition by stretch order by shown, n) as from_lowest,
        row_number() over (partition by stretch order by shown desc, n) as from_highest
      from stretched
    )
    select ${AS_JSON} as points, max(total)::integer as total, max(beyond_total)::integer as beyond
    from (
      select * from marked
      where total <= $7::integer or from_lowest = 1 or from_highest = 1 or n > total - ${KEPT_WHOLE}
      order by n
    ) points`;
}
