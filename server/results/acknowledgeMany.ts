import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { type Scope, visitsOf } from '../access/scopes/scope.ts';
import { announceRooms } from '../database/roomChannel.ts';
import type { AcknowledgementsBody } from '../schemas/results.ts';
import { SUCCESSOR } from './formerWarnings.ts';

/**
 * Notes that a person has seen every open warning among those named, by an id of now or of before, and of the coaches
 * named, and answers their ids. What the person does not see, and what is not open, is left as it is.
 */
export async function acknowledgeMany(
  db: Kysely<Tables>,
  person: Scope,
  { warnings = [], coaches = [], note }: AcknowledgementsBody,
): Promise<string[]> {
  const visits = visitsOf(person);
  const accounts = [person.accountId, ...visits.map((visit) => visit.accountId)];
  const successors = sql`
    select ${SUCCESSOR} from former_warnings f
    where f.account_id = any(${accounts}::uuid[]) and f.id = any(${warnings}::uuid[])`;
  const { rows } = await sql<{ id: string; account_id: string; room_id: string }>`
    update warnings w
    set acknowledged_at = now(), acknowledged_by = ${person.personId}, acknowledgement_note = ${note ?? null}
    from rooms r
    where r.account_id = w.account_id and r.id = w.room_id
      and w.cleared_at is null and w.acknowledged_at is null
      and (w.id = any(${warnings}::uuid[]) or w.id in (${successors}) or r.coach_id = any(${coaches}::uuid[]))
      and (w.account_id = ${person.accountId} or (w.account_id, r.coach_id) in (
        select * from unnest(
          ${visits.map((visit) => visit.accountId)}::uuid[], ${visits.map((visit) => visit.coachId)}::uuid[]
        )
      ))
    returning w.id, w.account_id, w.room_id
  `.execute(db);
  const rooms = new Map(rows.map((row) => [row.room_id, row.account_id]));
  await announceRooms(
    db,
    [...rooms].map(([roomId, accountId]) => ({ accountId, roomId })),
  );
  return rows.map((row) => row.id);
}
