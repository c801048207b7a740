import type { PostgresCursor, PostgresPool, PostgresQueryResult } from 'kysely';
import pg from 'pg';

/** Texts that differ from time to time, as one with a place for each of many rows, must not fill every connection. */
const MOST_TEXTS = 200;
/** What Postgres says of a planned statement whose columns are others by now: somebody changed its table. */
const OTHER_COLUMNS = '0A000';

/**
 * The same connections for Kysely, each of which plans a statement once and not every time: for work that goes by the
 * same few dozen statements for ever. To read and plan those for a single room takes longer than to do them. A
 * connection whose plans do not fit the tables any more is not used again.
 */
export function plannedOnce(pool: pg.Pool): PostgresPool {
  const names = new Map<string, string>();
  const nameOf = (text: string): string | undefined => {
    if (!names.has(text) && names.size < MOST_TEXTS) names.set(text, `planned ${names.size}`);
    return names.get(text);
  };
  return {
    end: () => pool.end(),
    async connect() {
      const client = await pool.connect();
      let isOutdated = false;
      const ask = async (text: string, values: readonly unknown[]) => {
        // What begins and ends transactions has no values, and nothing to plan.
        const name = values.length > 0 ? nameOf(text) : undefined;
        try {
          return await client.query({ name, text, values: [...values] });
        } catch (error) {
          if (error instanceof pg.DatabaseError && error.code === OTHER_COLUMNS) isOutdated = true;
          throw error;
        }
      };
      function query<Row>(text: string, values: readonly unknown[]): Promise<PostgresQueryResult<Row>>;
      function query<Row>(cursor: PostgresCursor<Row>): PostgresCursor<Row>;
      function query(asked: string | PostgresCursor<unknown>, values: readonly unknown[] = []): unknown {
        if (typeof asked !== 'string') throw new TypeError('A cursor cannot be planned once.');
        return ask(asked, values);
      }
      return { query, release: (discarded) => client.release(discarded === true || isOutdated) };
    },
  };
}
