import { MEASURE_NAMES, type MeasureName } from '../../analysis/measures.ts';
import type { Direction } from '../../analysis/trace.ts';
import type { AccountInScope } from '../access/scope.ts';
import type { Queries } from '../database/openDatabase.ts';
import type { Trend } from '../schemas/results.ts';
import { PACKED, PackedPoints } from './packedPoints.ts';

export interface TrendQuestion {
  readonly measure: MeasureName;
  readonly direction: Direction;
  readonly side?: string;
  readonly from?: string;
  readonly to?: string;
  /** At most about so many; all where it is left out. */
  readonly points?: number;
}

/** Whose points: one side of a room. */
export interface TrendPlace {
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
  place: TrendPlace,
  question: TrendQuestion,
): Promise<TrendPoints> {
  const { points: most } = question;
  if (most === undefined)
    return { text: `[${(await ask(pool, place, question, AS_JSON)) ?? ''}]`, thinned: undefined };
  const points = new PackedPoints(await ask(pool, place, question, PACKED));
  const isThinned = points.count > most;
  const texts = isThinned ? thinOut(points, most).map((point) => points.text(point)) : points.texts();
  const thinned = isThinned ? { points: points.count, beyond: points.countBeyond() } : undefined;
  return { text: `[${texts.join()}]`, thinned };
}

/** What an aggregate answers for all points in order of time; null where there is none. */
async function ask(
  pool: Queries,
  { accountId, roomId, side }: TrendPlace,
  { measure, direction, from, to }: TrendQuestion,
  aggregate: string,
): Promise<string | null> {
  // Postgres counts from 1. The name has been checked against the registry.
  const index = MEASURE_NAMES.indexOf(measure) + 1;
  const { rows } = await pool.query<{ points: string | null }>({
    name: `trend-${index}-${aggregate === PACKED ? 'packed' : 'text'}`,
    text: `select ${aggregate} as points from (${rowsText(index)}) points`,
    values: [accountId, roomId, side, direction, from ?? null, to ?? null],
  });
  return rows[0].points;
}

/**
 * All of them, put into text by the database so that they pass through here untouched. The times have whole
 * milliseconds: with a microsecond more all of them have six digits, of which three are left.
 */
const AS_JSON = `string_agg(
  '{"strokeId":"' || stroke_id || '","at":'
    || left(to_json(placed_at at time zone 'UTC' + interval '1 microsecond')::text, 24) || 'Z","value":' || value
    || ',"expected":' || coalesce(expected::text, 'null') || ',"adjusted":' || coalesce(adjusted::text, 'null')
    || ',"beyond":' || coalesce(beyond, false) || '}', ','
)`;

function rowsText(index: number): string {
  return `
    select stroke_id, placed_at, value[${index}] as value, expected[${index}] as expected,
      adjusted[${index}] as adjusted, beyond[${index}] as beyond
    from measures
    where account_id = $1 and room_id = $2 and side = $3 and direction = $4
      and placed_at >= coalesce($5::timestamptz, '-infinity')
      and placed_at <= coalesce($6::timestamptz, 'infinity')
      and value[${index}] is not null
    -- Here the primary key gives the order; told to the aggregate, it would sort the finished texts.
    order by placed_at, stroke_id`;
}

/** Half as many stretches as `most`, of each its lowest and its highest point, the earlier of equals; and the newest. */
function thinOut(points: PackedPoints, most: number): number[] {
  const stretches = Math.max(1, Math.floor(most / 2));
  const kept = new Set<number>();
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = Math.ceil((stretch * points.count) / stretches);
    const to = Math.ceil(((stretch + 1) * points.count) / stretches);
    let [lowest, highest] = [from, from];
    for (let point = from + 1; point < to; point++) {
      if (points.shown(point) < points.shown(lowest)) lowest = point;
      if (points.shown(point) > points.shown(highest)) highest = point;
    }
    kept.add(Math.min(lowest, highest)).add(Math.max(lowest, highest));
  }
  for (let point = Math.max(0, points.count - KEPT_WHOLE); point < points.count; point++) kept.add(point);
  return [...kept].sort((a, b) => a - b);
}
