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
/** Finds out about a server that is gone without a word. */
const KEEP_ALIVE_AFTER_MS = 10_000;

/** How long Postgres lets a connection's statements take. */
export interface Patience {
  readonly lock_timeout?: number;
  readonly statement_timeout?: number;
  readonly idle_in_transaction_session_timeout?: number;
}

/**
 * Of requests, milliseconds: what waits longer is given up and answered 503, so that nothing hangs on what others
 * hold; a holder of locks that says nothing any more is cut off.
 */
const OF_REQUESTS: Patience = {
  lock_timeout: 5000,
  statement_timeout: 30_000,
  idle_in_transaction_session_timeout: 60_000,
};

/** Of work that nobody waits for at the other end of a line. */
export const WITHOUT_LIMITS: Patience = {};

/** Opens a pool on a Postgres URL. Nothing is asked of the server before the first query. */
export function openDatabase(
  url: string,
  connections: number = CONNECTIONS,
  patience: Patience = OF_REQUESTS,
): Database {
  const pool = new pg.Pool({
    connectionString: url,
    max: connections,
    connectionTimeoutMillis: CONNECT_WITHIN_MS,
    application_name: 'slideload',
    ...patience,
    keepAlive: true,
    keepAliveInitialDelayMillis: KEEP_ALIVE_AFTER_MS,
  });
  // A connection that dies while idle is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined);
  // One that dies in somebody's hands between two statements too: the next statement says so to whoever holds it.
  pool.on('connect', (client) => client.on('error', () => undefined));
  return { pool, db: new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) }) };
}
