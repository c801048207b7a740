import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';

/** Waits until nobody else has the turn of that name, in any process, and has it until the transaction ends. */
export async function takeTurn(trx: Kysely<Tables>, name: string): Promise<void> {
  await sql`select pg_advisory_xact_lock(hashtextextended(${name}, 0))`.execute(trx);
}
