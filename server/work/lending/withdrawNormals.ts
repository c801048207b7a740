import type { Kysely } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { inTransaction } from '../../database/inTransaction.ts';
import type { WithdrawNormalsPayload } from '../../things/queueWithdrawal.ts';
import { readRoom } from '../reading/readRoom.ts';
import { withdrawAll } from './publishNormals.ts';

/** Does what `queueWithdrawal` queued. Done again, or after the room was given a model once more, it changes nothing. */
export async function withdrawNormals(db: Kysely<Tables>, payload: WithdrawNormalsPayload): Promise<void> {
  await inTransaction(db, async (trx) => {
    const room = await readRoom(trx, payload.accountId, payload.roomId);
    if (room === null || room.peers === null) await withdrawAll(trx, payload);
  });
}
