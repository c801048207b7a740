import { MEASURES, type MeasureName } from '../../../analysis/measures.ts';
import type { Direction } from '../../../analysis/trace.ts';
import type { Queries } from '../../../ingest/queries.ts';
import type { AccountInScope } from '../../access/scopes/scope.ts';
import type { Trend, TrendQuery } from '../../schemas/results.ts';
import { isBeyond, measurePlace } from '../measurePlace.ts';
import { timesToKeep } from './timesToKeep.ts';
import { OUTLINE, type OutlineRow, outlinePoint, TrendOutline } from './trendOutline.ts';

/** Whose points. */
export interface TrendPlace {
  readonly accountId: AccountInScope;
  readonly roomId: string;
  readonly sides: readonly string[];
  readonly directions: readonly Direction[];
}

/** Whether all points have one normal, and are read from the index as they stand in it. */
export function isOneSeries({ sides, directions }: TrendPlace): boolean {
  return sides.length === 1 && directions.length === 1;
}

/** Whether a measure is the same for all sides of a stroke. */
export function isOfStroke(measure: MeasureName): boolean {
  return MEASURES.some(({ name, of }) => name === measure && of === 'stroke');
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
      // Each of these times has a point of every side.
      const kept = timesToKeep(outline, Math.floor(most / place.sides.length));
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
const asJson = (whose: string) => `string_agg(
  '{"strokeId":"' || stroke_id || '","at":'
    || left(to_json(placed_at at time zone 'UTC' + interval '1 microsecond')::text, 24) || 'Z","value":' || value
    || ',"expected":' || coalesce(expected::text, 'null') || ',"adjusted":' || coalesce(adjusted::text, 'null')
    || ',"beyond":' || beyond || ${whose}'}', ','
) as text`;
const AS_JSON = asJson('');
/** With whose each is. */
const AS_JSON_OF_SEVERAL = asJson(`',"side":' || coalesce(to_json(of_side)::text, 'null')
    || ',"direction":"' || direction || '"' || `);

/** All that a point tells, of the measure whose place in the rows' lists is `index`. */
const wholePoint = (index: number) => `
  stroke_id, placed_at, value[${index}] as value, expected[${index}] as expected, adjusted[${index}] as adjusted,
  ${isBeyond(index)} as beyond`;

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
  place: TrendPlace,
  { measure, from, to }: TrendQuery,
  asked: keyof typeof ASKED,
  more: readonly string[] = [],
): Promise<Row> {
  const index = measurePlace(measure);
  const { answer, read, order, of } = ASKED[asked];
  const { accountId, roomId, sides, directions } = place;
  const isOne = isOneSeries(place);
  const whose = isOne
    ? { name: '', answer, columns: '', where: 'side = $3 and direction = $4' }
    : {
        name: '-of-several',
        answer: answer === AS_JSON ? AS_JSON_OF_SEVERAL : answer,
        columns: `, direction, ${isOfStroke(measure) ? 'null::text' : 'side'} as of_side`,
        where: 'side = any($3::text[]) and direction = any($4::text[])',
      };
  const { rows } = await pool.query<Row>({
    name: `trend-${index}-${asked}${whose.name}`,
    text: `
      select ${whose.answer} from (
        select ${read(index)}${whose.columns}
        from measures
        where account_id = $1 and room_id = $2 and ${whose.where}
          and placed_at >= $5::timestamptz and placed_at <= $6::timestamptz and ${of}
          and value[${index}] is not null
        -- Here the primary key gives the order; told to the aggregate, it would sort the finished texts.
        order by ${isOne ? order : `${order}, array_position($3::text[], side)`}
      ) points`,
    // Put together by Postgres the span would come after the second lock, and not be looked up in the index.
    values: [
      accountId,
      roomId,
      ...(isOne ? [sides[0], directions[0]] : [sides, directions]),
      from ?? '-infinity',
      to ?? 'infinity',
      ...more,
    ],
  });
  return rows[0];
}
