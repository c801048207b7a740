import type { Kysely, Transaction } from 'kysely';
import { codeOf, GIVEN_UP } from '../../ingest/errorCode.ts';
import type { Tables } from '../../migrations/tables.ts';
import { isOutdated } from './plannedOnce.ts';

const TRIES = 4;

/**
 * Runs a change in one transaction, and once more when Postgres gave it up for another's sake (a deadlock, a
 * serialization failure, a table that somebody changed): a client has no part in any.
 */
export async function inTransaction<Result>(
  db: Kysely<Tables>,
  change: (trx: Transaction<Tables>) => Promise<Result>,
): Promise<Result> {
  for (let tried = 1; ; tried++) {
    try {
      return await db.transaction().execute(change);
    } catch (error) {
      if (tried === TRIES || !isGivenUp(error)) throw error;
    }
  }
}

export function isGivenUp(error: unknown): boolean {
  return GIVEN_UP.includes(codeOf(error)) || isOutdated(error);
}
