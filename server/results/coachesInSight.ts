import { type RawBuilder, sql } from 'kysely';
import type { Verdict } from '../../analysis/warning.ts';
import { type Scope, visitsOf } from '../access/scope.ts';

/** The most worrying first. A room without an answer asks for more than one that is merely learning. */
export const BY_CONCERN: readonly Verdict[] = ['stop', 'service', 'watch', 'unknown', 'learning', 'clear'];

/** A logger that was not heard for so long is silent: most coaches are moved, or looked after, more often. */
export const SILENT_DAYS = 14;

/**
 * Common table expressions of all that a person sees, at home and on visits: `coach` (with the role in which it is
 * seen), `room` (verdict now and at `since`, as places in `BY_CONCERN`) and `logger`. A room whose verdict did not
 * change after `since` has the same in both.
 */
export function coachesInSight(person: Scope, since: string | null): RawBuilder<unknown> {
  const visits = visitsOf(person);
  return sql`
    visit as (
      select * from unnest(
        ${visits.map((visit) => visit.accountId)}::uuid[], ${visits.map((visit) => visit.coachId)}::uuid[],
        ${visits.map((visit) => visit.role)}::text[]
      ) as v (account_id, coach_id, role)
    ),
    coach as (
      select c.account_id, c.id, c.name, c.model, c.year, c.created_at,
        case when c.account_id = ${person.accountId} then ${person.role} else v.role end as role
      from coaches c
      left join visit v on v.account_id = c.account_id and v.coach_id = c.id
      where c.account_id = ${person.accountId} or (c.account_id, c.id) in (select account_id, coach_id from visit)
    ),
    before as (
      select distinct on (account_id, room_id) account_id, room_id, verdict_before
      from verdict_changes
      where changed_at > ${since}::timestamptz
        and account_id = any(${[person.accountId, ...visits.map((visit) => visit.accountId)]}::uuid[])
      order by account_id, room_id, changed_at
    ),
    room as (
      select r.account_id, r.coach_id, r.id, r.name, ${placeOf(sql`coalesce(o.verdict, 'learning')`)} as place,
        ${placeOf(sql`coalesce(b.verdict_before, o.verdict, 'learning')`)} as place_before
      from coach c
      join rooms r on r.account_id = c.account_id and r.coach_id = c.id
      left join room_results o on o.account_id = r.account_id and o.room_id = r.id
      left join before b on b.account_id = r.account_id and b.room_id = r.id
    ),
    logger as (
      select l.account_id, l.coach_id, l.id, l.name, l.last_seen_at,
        coalesce(l.last_seen_at, l.created_at) < now() - make_interval(days => ${SILENT_DAYS}) as silent
      from coach c join loggers l on l.account_id = c.account_id and l.coach_id = c.id
    )
  `;
}

function placeOf(verdict: RawBuilder<unknown>): RawBuilder<number> {
  return sql<number>`array_position(${BY_CONCERN}::text[], ${verdict})`;
}
