import { type Kysely, type RawBuilder, sql } from 'kysely';
import { VERDICTS } from '../../../analysis/warning.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { Scope } from '../../access/scopes/scope.ts';
import type { OverviewSummary } from '../../schemas/overview.ts';
import { BY_CONCERN, coachesInSight, IS_SILENT, verdictsBefore } from './coachesInSight.ts';

/** As many as a person can choose from. */
const MOST_NAMES = 200;
/** Verdicts that say something is wrong are the first of `BY_CONCERN`. */
const LAST_TROUBLE = BY_CONCERN.indexOf('watch') + 1;

interface SummaryRow {
  readonly coaches: number;
  readonly silent: number;
  readonly models: string[];
  readonly room_names: string[];
  readonly places: (number | null)[];
  readonly worse: number;
  readonly better: number;
  readonly cleared: number;
  readonly arrived: number;
}

/** All that the person sees, in numbers, and what changed since a moment. */
export async function overviewSummary(
  db: Kysely<Tables>,
  person: Scope,
  since: string | null,
): Promise<OverviewSummary> {
  const { rows } = await sql<SummaryRow>`
    with ${coachesInSight(person)}, ${verdictsBefore(person, since)},
    room as (
      select r.name, concern_of(o.verdict) as place, concern_of(coalesce(b.verdict_before, o.verdict)) as place_before
      from rooms r
      left join room_results o on o.account_id = r.account_id and o.room_id = r.id
      left join before b on b.account_id = r.account_id and b.room_id = r.id
      where (r.account_id, r.coach_id) in (select account_id, id from coach)
    )
    select
      (select count(*)::int from coach) as coaches,
      (select count(*)::int from coach c join loggers l on l.account_id = c.account_id and l.coach_id = c.id
        where ${IS_SILENT}) as silent,
      -- Spellings that differ in case alone are one model, as they are to rooms that borrow: the most common stands for all.
      array(select mode() within group (order by model) from coach where model is not null
        group by lower(model) order by 1 limit ${MOST_NAMES}) as models,
      array(select name from room group by name order by count(*) desc, name limit ${MOST_NAMES}) as room_names,
      (select count(*)::int from coach where created_at > ${since}::timestamptz) as arrived,
      counted.*
    from (
      select
        array[${sql.join(BY_CONCERN.map((_, place) => countWhere(sql`place = ${sql.lit(place + 1)}`)))}] as places,
        ${countWhere(sql`place < place_before and place <= ${LAST_TROUBLE}`)} as worse,
        ${countWhere(sql`place > place_before and place <= ${LAST_TROUBLE}`)} as better,
        ${countWhere(sql`place_before <= ${LAST_TROUBLE} and place > ${LAST_TROUBLE}`)} as cleared
      from room
    ) counted
  `.execute(db);
  const [row] = rows;
  const count = (place: number) => row?.places[place] ?? 0;
  return {
    coaches: row?.coaches ?? 0,
    // Every verdict has its entry.
    rooms: Object.fromEntries(
      VERDICTS.map((verdict) => [verdict, count(BY_CONCERN.indexOf(verdict))]),
    ) as OverviewSummary['rooms'],
    silentLoggers: row?.silent ?? 0,
    models: row?.models ?? [],
    roomNames: row?.room_names ?? [],
    changes:
      since === null || row === undefined
        ? null
        : { worse: row.worse, better: row.better, cleared: row.cleared, arrived: row.arrived },
  };
}

/** Of all rooms, counted in one go. */
function countWhere(condition: RawBuilder<unknown>): RawBuilder<number> {
  return sql<number>`count(*) filter (where ${condition})::int`;
}
