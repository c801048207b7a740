import { MEASURE_NAMES } from '../../../analysis/measures.ts';
import type { Queries } from '../../../ingest/queries.ts';
import type { AccountInScope } from '../../access/scopes/scope.ts';
import type { Trend, TrendQuery } from '../../schemas/results.ts';
import { timesToKeep } from './timesToKeep.ts';
import { OUTLINE, type OutlineRow, outlinePoint, TrendOutline } from './trendOutline.ts';

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

/**
 * The points of a trend as JSON text. Where there are more than `points` asked for, the lowest and the highest of each
 * stretch stay, what is beyond the limits and the newest, and how many there were is told. To hand over all of a large
 * room, most of it to be left out, takes longer than to ask twice: first what they are chosen by, then for the chosen.
 * What changes between the two is shown as it is by then.
 */
export async function trendPoints(
  pool: Queries,
  place: TrendPlace,
  question: TrendQuery,
): Promise<TrendPoints> {
  const { points: most } = question;
  if (most !== undefined) {
    const outline = new TrendOutline(await ask<OutlineRow>(pool, place, question, 'outline'));
    if (outline.count > most) {
      const kept = timesToKeep(outline, most);
      const { text } = await ask<TextRow>(pool, place, question, 'kept', [`{${[...kept].join()}}`]);
      return { text: `[${text ?? ''}]`, thinned: { points: outline.count, beyond: outline.countBeyond } };
    }
  }
  const { text } = await ask<TextRow>(pool, place, question, 'all');
  return { text: `[${text ?? ''}]`, thinned: undefined };
}

/** Null where there is no point. */
interface TextRow {
  readonly text: string | null;
}

/**
 * The points put into text by the database, so that they pass through here untouched. The times have whole
 * milliseconds: with a microsecond more all of them have six digits, of which three are left.
 */
const AS_JSON = `string_agg(
  '{"strokeId":"' || stroke_id || '","at":'
    || left(to_json(placed_at at time zone 'UTC' + interval '1 microsecond')::text, 24) || 'Z","value":' || value
    || ',"expected":' || coalesce(expected::text, 'null') || ',"adjusted":' || coalesce(adjusted::text, 'null')
    || ',"beyond":' || coalesce(beyond, false) || '}', ','
) as text`;

/** All that a point tells, of the measure whose place in the rows' lists is `index`. */
const wholePoint = (index: number) => `
  stroke_id, placed_at, value[${index}] as value, expected[${index}] as expected, adjusted[${index}] as adjusted,
  beyond[${index}] as beyond`;

/** What is asked of the points, read from which columns, in which order, and of which: `$7` are the times of the kept. */
const ASKED = {
  outline: { answer: OUTLINE, read: outlinePoint, order: 'placed_at', of: 'true' },
  all: { answer: AS_JSON, read: wholePoint, order: 'placed_at, stroke_id', of: 'true' },
  kept: {
    answer: AS_JSON,
    read: wholePoint,
    order: 'placed_at, stroke_id',
    of: `placed_at = any (array(
      select timestamptz '2000-01-01 00:00Z' + since::double precision * interval '1 microsecond'
      from unnest($7::bigint[]) since
    ))`,
  },
} as const;

async function ask<Row extends object>(
  pool: Queries,
  { accountId, roomId, side }: TrendPlace,
  { measure, direction, from, to }: TrendQuery,
  asked: keyof typeof ASKED,
  more: readonly string[] = [],
): Promise<Row> {
  // Postgres counts from 1. The name has been checked against the registry.
  const index = MEASURE_NAMES.indexOf(measure) + 1;
  const { answer, read, order, of } = ASKED[asked];
  const { rows } = await pool.query<Row>({
    name: `trend-${index}-${asked}`,
    text: `
      select ${answer} from (
        select ${read(index)}
        from measures
        where account_id = $1 and room_id = $2 and side = $3 and direction = $4
          and placed_at >= $5::timestamptz and placed_at <= $6::timestamptz and ${of}
          and value[${index}] is not null
        -- Here the primary key gives the order; told to the aggregate, it would sort the finished texts.
        order by ${order}
      ) points`,
    // Put together by Postgres the span would come after the second lock, and not be looked up in the index.
    values: [accountId, roomId, side, direction, from ?? '-infinity', to ?? 'infinity', ...more],
  });
  return rows[0];
}
