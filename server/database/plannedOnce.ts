import type { PostgresCursor, PostgresPool, PostgresPoolClient, PostgresQueryResult } from 'kysely';
import pg from 'pg';
import type { PlannedTexts } from './plannedTexts.ts';

/** Where Postgres says of a planned statement that its columns are others by now: somebody changed its table. */
const OUTDATED_AT = 'RevalidateCachedQuery';

type Connections = Pick<pg.Pool, 'connect'> & { end(): Promise<void> };

/**
 * The same connections for Kysely, but each plans a statement once and not every time. A service asks the same few dozen
 * statements for ever, and reading and planning them for a single room takes longer than doing them. Where the tables have changed
 * meanwhile, a statement by itself is asked again, and a transaction fails like one that Postgres gave up (`isGivenUp`).
 */
export function plannedOnce(pool: Connections, texts: PlannedTexts): PostgresPool {
  return {
    end: () => pool.end(),
    connect: async () => onConnection(await pool.connect(), texts),
  };
}

function onConnection(client: pg.PoolClient, texts: PlannedTexts): PostgresPoolClient {
  let isInTransaction = false;
  const ask = async (text: string, values: readonly unknown[]) => {
    // What begins and ends transactions has no values, and nothing to plan.
    if (values.length === 0) {
      const result = await client.query(text);
      isInTransaction = isInTransactionAfter(text, isInTransaction);
      return result;
    }
    const planned = () => client.query({ name: texts.nameOf(text), text, values: [...values] });
    try {
      return await planned();
    } catch (error) {
      if (!isOutdated(error)) throw error;
      texts.forget();
      if (isInTransaction) throw error;
      return await planned();
    }
  };
  function query<Row>(text: string, values: readonly unknown[]): Promise<PostgresQueryResult<Row>>;
  function query<Row>(cursor: PostgresCursor<Row>): PostgresCursor<Row>;
  function query(asked: string | PostgresCursor<unknown>, values: readonly unknown[] = []): unknown {
    if (typeof asked !== 'string') throw new TypeError('A cursor cannot be planned once.');
    return ask(asked, values);
  }
  return { query, release: () => client.release() };
}

function isInTransactionAfter(text: string, before: boolean): boolean {
  if (/^(begin|start transaction)\b/i.test(text)) return true;
  return before && !/^(commit|rollback)$/i.test(text);
}

/** Whether a statement failed for no other reason than that its plan is of tables as they were. */
export function isOutdated(error: unknown): boolean {
  return error instanceof pg.DatabaseError && error.routine === OUTDATED_AT;
}
