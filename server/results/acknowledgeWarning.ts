import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import type { PersonCaller } from '../access/scopes/caller.ts';
import { announceRooms } from '../database/roomChannel.ts';
import type { Warning } from '../schemas/results.ts';
import { findWarning } from './warnings.ts';
import { warningView } from './warningView.ts';

/**
 * Notes that a person has seen a warning. The first to do so stays; a later note replaces the earlier one. Whoever
 * watches the room is told.
 */
export async function acknowledgeWarning(
  db: Kysely<Tables>,
  caller: PersonCaller,
  warningId: string,
  note: string | null | undefined,
): Promise<Warning> {
  const found = await findWarning(db, caller.accountId, warningId);
  const { numUpdatedRows } = await db
    .updateTable('warnings')
    .set({
      acknowledged_at: sql`coalesce(acknowledged_at, now())`,
      acknowledged_by: sql`coalesce(acknowledged_by, ${caller.personId})`,
      // One that was left out leaves an earlier one.
      acknowledgement_note: note,
    })
    .where('account_id', '=', caller.accountId)
    .where('id', '=', found.id)
    .executeTakeFirstOrThrow();
  // A late stroke opened it elsewhere just then, under another id.
  if (numUpdatedRows === 0n) return acknowledgeWarning(db, caller, warningId, note);
  const row = await findWarning(db, caller.accountId, warningId);
  await announceRooms(db, [{ accountId: caller.accountId, roomId: row.room_id }]);
  return warningView(row);
}
