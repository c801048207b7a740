import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import type { Tables } from '../../migrations/tables.ts';

export interface Database {
  readonly pool: pg.Pool;
  readonly db: Kysely<Tables>;
}

const CONNECTIONS = 10;
const CONNECT_WITHIN_MS = 10_000;

/** Opens a pool on a Postgres URL. Nothing is asked of the server before the first query. */
export function openDatabase(url: string, connections: number = CONNECTIONS): Database {
  const pool = new pg.Pool({
    connectionString: url,
    max: connections,
    connectionTimeoutMillis: CONNECT_WITHIN_MS,
    application_name: 'slideload',
  });
  // A connection that dies while idle is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined);
  return { pool, db: new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) }) };
}
