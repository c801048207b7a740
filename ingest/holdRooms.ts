import { type Kysely, sql } from 'kysely';
import type { Tables } from '../migrations/tables.ts';

/**
 * Keeps rooms from being removed until the transaction ends; those that are gone, or out of sight, are passed over. Before
 * their progress, strokes or services are locked: whoever removes a room holds it first, so that neither waits for the other
 * in a ring.
 */
export async function holdRooms(
  trx: Kysely<Tables>,
  rooms: readonly { readonly accountId: string; readonly roomId: string }[],
): Promise<void> {
  await sql`
    select from rooms r
    where (r.account_id, r.id) in (
      select * from unnest(
        ${rooms.map(({ accountId }) => accountId)}::uuid[], ${rooms.map(({ roomId }) => roomId)}::uuid[]
      )
    )
    order by r.account_id, r.id for key share
  `.execute(trx);
}
