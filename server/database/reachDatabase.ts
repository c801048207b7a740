import type pg from 'pg';
import { StartError } from './startError.ts';

/** Asks the database once. Throws `StartError` with one clear line when it does not answer or does not let us in. */
export async function reachDatabase(pool: pg.Pool): Promise<void> {
  await pool.query('select 1').catch((cause: unknown) => {
    throw new StartError(`The database at DATABASE_URL cannot be used: ${reasonOf(cause)}.`, { cause });
  });
}

/** Trying several addresses of one name fails with an error that holds one for each. */
function reasonOf(error: unknown): string {
  const [first] = error instanceof AggregateError ? error.errors : [error];
  return first instanceof Error ? first.message.replace(/\.$/, '') : String(first);
}
