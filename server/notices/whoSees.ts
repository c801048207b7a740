import { type Kysely, type RawBuilder, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import type { OfCoach } from './notice.ts';

/** SQL of the people, as (account_id, id), who see a coach at that time: of its account, and by grants. */
export function whoSees({ accountId, coachId }: OfCoach, now: Date): RawBuilder<unknown> {
  return sql`
    select p.account_id, p.id from people p where p.account_id = ${accountId}
    union
    select d.account_id, d.person_id from grants g join directory d on d.person_id = g.person_id
    where g.account_id = ${accountId} and g.coach_id = ${coachId}
      and (g.until is null or g.until > ${now.toISOString()}::timestamptz)
  `;
}

/** Those of the coaches that a person sees at that time, by id: a grant may have ended, a coach been deleted. */
export async function coachesSeenBy(
  db: Kysely<Tables>,
  person: { readonly accountId: string; readonly personId: string },
  coaches: readonly OfCoach[],
  now: Date,
): Promise<ReadonlySet<string>> {
  const { rows } = await sql<{ id: string }>`
    select c.id
    from unnest(
      ${coaches.map(({ accountId }) => accountId)}::uuid[], ${coaches.map(({ coachId }) => coachId)}::uuid[]
    ) as k (account_id, coach_id)
    join coaches c on c.account_id = k.account_id and c.id = k.coach_id and c.deleted_at is null
    where c.account_id = ${person.accountId} or exists (
      select from grants g
      where g.account_id = c.account_id and g.coach_id = c.id and g.person_id = ${person.personId}
        and (g.until is null or g.until > ${now.toISOString()}::timestamptz)
    )
  `.execute(db);
  return new Set(rows.map(({ id }) => id));
}
