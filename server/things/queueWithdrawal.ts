import type { Kysely } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { queueJob } from '../database/queueJob.ts';

/** The queue's name for the work that a room leaves to those who borrowed from it when it is of their model no more. */
export const WITHDRAW_NORMALS = 'withdraw-normals';

export interface WithdrawNormalsPayload {
  readonly accountId: string;
  readonly roomId: string;
}

/**
 * Queues that work, in the transaction that removes the rooms or takes their coach's model away. Whoever does so may
 * not see the rooms of other coaches that borrowed from them.
 */
export async function queueWithdrawal(
  trx: Kysely<Tables>,
  accountId: string,
  roomIds: readonly string[],
): Promise<void> {
  for (const roomId of roomIds) await queueJob(trx, WITHDRAW_NORMALS, { accountId, roomId });
}
