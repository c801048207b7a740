import type { PoolClient } from 'pg';
import { codeOf, GIVEN_UP, IS_GONE } from './errorCode.ts';
import type { Connections } from './queries.ts';

/** The last: a statement in it failed before, and was tried again within it. */
const TRY_AGAIN = new Set([...GIVEN_UP, IS_GONE, '25P02']);
const MOST_TRIES = 4;

/** Runs the work in a transaction of one connection, and once more where Postgres gave it up. */
export async function inClientTransaction<Result>(
  pool: Connections,
  work: (client: PoolClient) => Promise<Result>,
): Promise<Result> {
  for (let tries = 1; ; tries++) {
    const client = await pool.connect();
    let isBroken = false;
    try {
      await client.query('begin');
      const result = await work(client);
      await client.query('commit');
      return result;
    } catch (error) {
      await client.query('rollback').catch(() => {
        isBroken = true;
      });
      if (tries === MOST_TRIES || !TRY_AGAIN.has(codeOf(error))) throw error;
    } finally {
      // One that could not even roll back is broken: the pool replaces it.
      client.release(isBroken);
    }
  }
}
