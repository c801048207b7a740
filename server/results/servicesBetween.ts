import type { Kysely } from 'kysely';
import type { ServiceKind } from '../../analysis/trace.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scope.ts';
import type { Service } from '../schemas/service.ts';

/** The room's services of a span, oldest first. */
export async function servicesBetween(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  from: string | undefined,
  to: string | undefined,
): Promise<Service[]> {
  let query = db
    .selectFrom('services')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId);
  if (from !== undefined) query = query.where('at', '>=', new Date(from));
  if (to !== undefined) query = query.where('at', '<=', new Date(to));
  const rows = await query.orderBy('at').orderBy('id').execute();
  return rows.map((row) => ({
    id: row.id,
    roomId: row.room_id,
    // The kinds are checked on the way in.
    kind: row.kind as ServiceKind,
    at: row.at.toISOString(),
    side: row.side,
    notes: row.notes,
    createdAt: row.created_at.toISOString(),
    updatedAt: row.updated_at.toISOString(),
  }));
}
