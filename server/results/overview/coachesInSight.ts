import { type RawBuilder, sql } from 'kysely';
import type { Verdict } from '../../../analysis/warning.ts';
import { type Scope, visitsOf } from '../../access/scopes/scope.ts';

/**
 * The most worrying first, as `concern_of` of the database has it. A room without an answer asks for more than one that
 * is merely learning.
 */
export const BY_CONCERN: readonly Verdict[] = ['stop', 'service', 'watch', 'unknown', 'learning', 'clear'];

/** A logger that was not heard for so long is silent: most coaches are moved, or looked after, more often. */
export const SILENT_DAYS = 14;

/** Whether a row of `loggers as l` is. */
export const IS_SILENT = sql<boolean>`coalesce(l.last_seen_at, l.created_at)
  < now() - make_interval(days => ${sql.lit(SILENT_DAYS)})`;

/** Of a row of `room_results as o`, which a room may be without: its verdict. */
export const VERDICT = sql<Verdict>`coalesce(o.verdict, 'learning')`;

/** The accounts that a person sees something of. */
export function accountsInSight(person: Scope): RawBuilder<string[]> {
  return sql`${[...new Set([person.accountId, ...visitsOf(person).map(({ accountId }) => accountId)])]}::uuid[]`;
}

/**
 * A common table expression, `coach`, of all coaches that a person sees, at home and on visits, with the role in which
 * it sees them.
 */
export function coachesInSight(person: Scope): RawBuilder<unknown> {
  const visits = visitsOf(person);
  const columns = sql`c.account_id, c.id, c.name, c.model, c.year, c.created_at, c.concern`;
  // By itself, so that an index can give their order.
  if (visits.length === 0)
    return sql`coach as (
      select ${columns}, ${person.role}::text as role from coaches c where c.account_id = ${person.accountId}
    )`;
  return sql`
    visit as (
      select * from unnest(
        ${visits.map((visit) => visit.accountId)}::uuid[], ${visits.map((visit) => visit.coachId)}::uuid[],
        ${visits.map((visit) => visit.role)}::text[]
      ) as v (account_id, coach_id, role)
    ),
    coach as (
      select ${columns}, case when c.account_id = ${person.accountId} then ${person.role} else v.role end as role
      from coaches c
      left join visit v on v.account_id = c.account_id and v.coach_id = c.id
      where c.account_id = ${person.accountId} or (c.account_id, c.id) in (select account_id, coach_id from visit)
    )`;
}

/** Another, `before`: of each room in sight whose verdict was changed after a moment, what it was then. */
export function verdictsBefore(person: Scope, since: string | null): RawBuilder<unknown> {
  return sql`
    before as (
      select distinct on (account_id, room_id) account_id, room_id, verdict_before
      from verdict_changes
      where changed_at > ${since}::timestamptz and account_id = any(${accountsInSight(person)})
      order by account_id, room_id, changed_at
    )`;
}
