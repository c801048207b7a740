import { type Kysely, sql } from 'kysely';
import { ANALYSIS_VERSION } from '../../../analysis/room/fold.ts';
import { BEGINNING, HAS_TRACE } from '../../../ingest/roomProgress.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { inTransaction } from '../../database/inTransaction.ts';

/**
 * Rooms whose results were made by another version of the analysis are made anew from their beginning; strokes whose
 * samples are no longer kept stay as they were measured.
 */
export async function markOutdatedRooms(db: Kysely<Tables>): Promise<void> {
  await inTransaction(db, async (trx) => {
    // Every stroke of every room, once a version.
    await sql`set local statement_timeout = 0`.execute(trx);
    const { rows } = await sql<{ account_id: string; room_id: string }>`
      with outdated as (
        select p.account_id, p.room_id from room_progress p
        where exists (
          select from room_checkpoints c
          where c.account_id = p.account_id and c.room_id = p.room_id and c.analysis_version <> ${ANALYSIS_VERSION}
        )
        order by p.account_id, p.room_id for update
      )
      update room_progress p set dirty_from = ${BEGINNING.toISOString()}::timestamptz, revision = p.revision + 1,
        measured_by = null
      from outdated o where o.account_id = p.account_id and o.room_id = p.room_id
      returning p.account_id, p.room_id
    `.execute(trx);
    await sql`
      update strokes s set analysis = null
      from unnest(
        ${rows.map((row) => row.account_id)}::uuid[], ${rows.map((row) => row.room_id)}::uuid[]
      ) as m (account_id, room_id)
      where s.account_id = m.account_id and s.room_id = m.room_id and ${HAS_TRACE}
    `.execute(trx);
  });
}
