import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';

/**
 * Queues work in the transaction that makes it necessary: what a death cuts off is done at the next start. It is due
 * from of old, not from now: a clock that is set back does not put it off. Work of one `key` that waits is queued once.
 */
export async function queueJob(
  trx: Kysely<Tables>,
  name: string,
  payload: object,
  key: string | null = null,
): Promise<void> {
  await sql`select graphile_worker.add_job(
    ${name}, ${JSON.stringify(payload)}::json, job_key => ${key}, run_at => 'epoch'
  )`.execute(trx);
}
