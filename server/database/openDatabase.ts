import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import type { Tables } from '../../migrations/tables.ts';

export interface Database {
  readonly pool: pg.Pool;
  readonly db: Kysely<Tables>;
}

const CONNECTIONS = 10;
/** For a connection, also for one that others hold. */
const CONNECT_WITHIN_MS = 5000;
/** Past these a statement is given up by Postgres and the request answered 503: nothing hangs on what others hold. */
const LOCK_WITHIN_MS = 5000;
const STATEMENT_WITHIN_MS = 30_000;
/** A holder of locks that says nothing any more is cut off. */
const IDLE_IN_TRANSACTION_MS = 60_000;
/** Finds out about a server that is gone without a word. */
const KEEP_ALIVE_AFTER_MS = 10_000;

/** Opens a pool on a Postgres URL. Nothing is asked of the server before the first query. */
export function openDatabase(url: string, connections: number = CONNECTIONS): Database {
  const pool = new pg.Pool({
    connectionString: url,
    max: connections,
    connectionTimeoutMillis: CONNECT_WITHIN_MS,
    application_name: 'slideload',
    lock_timeout: LOCK_WITHIN_MS,
    statement_timeout: STATEMENT_WITHIN_MS,
    idle_in_transaction_session_timeout: IDLE_IN_TRANSACTION_MS,
    keepAlive: true,
    keepAliveInitialDelayMillis: KEEP_ALIVE_AFTER_MS,
  });
  // A connection that dies while idle is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined);
  // One that dies in somebody's hands between two statements too: the next statement says so to whoever holds it.
  pool.on('connect', (client) => client.on('error', () => undefined));
  return { pool, db: new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) }) };
}
