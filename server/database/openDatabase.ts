import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import type { Connections } from '../../ingest/queries.ts';
import type { Tables } from '../../migrations/tables.ts';
import { plannedOnce } from './plannedOnce.ts';
import { PlannedTexts } from './plannedTexts.ts';
import type { RowScope } from './rowScope.ts';
import { ScopedPool } from './scopedPool.ts';
import { withSettings } from './withSettings.ts';

/** A pool and Kysely on it, both in one scope. */
export interface Database {
  readonly pool: ScopedPool;
  readonly db: Kysely<Tables>;
}

/** The same connections, in the scope of one caller or task. */
export interface DatabaseInScope {
  readonly pool: Connections;
  readonly db: Kysely<Tables>;
}

const CONNECTIONS = 10;
/** For a new connection; for one that others have `scopedPool.ts` says how long. */
const CONNECT_WITHIN_MS = 5000;
/** Finds out about a server that is gone without a word. */
const KEEP_ALIVE_AFTER_MS = 10_000;

/**
 * What our statements and the driver rely on, as Postgres comes with it. Whoever runs the server may have set it
 * otherwise for others: times in a zone of its own, dates that the driver cannot read.
 */
const RELIED_ON = {
  timezone: 'UTC',
  datestyle: 'ISO',
  intervalstyle: 'postgres',
  bytea_output: 'hex',
  extra_float_digits: '1',
  standard_conforming_strings: 'on',
  default_transaction_isolation: 'read committed',
  default_transaction_deferrable: 'off',
};

/** How long Postgres lets a connection's statements take. */
interface Patience {
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

interface OpenOptions {
  readonly patience?: Patience;
  readonly itsOwn?: RowScope;
  /**
   * Whatever is written follows from what others committed and would be made again: no commit waits for the disk, and
   * nobody waits so long for the rows that it holds. Commits reach the disk in their order.
   */
  readonly isDerived?: boolean;
}

/**
 * Opens a pool on a Postgres URL. Nothing is asked of the server before the first query. Used as it is, it sees no
 * row of any account, unless `itsOwn` scope says otherwise: take it `inScope` of a caller. It is closed by ending the
 * pool, which all scopes share.
 */
export function openDatabase(
  url: string,
  connections: number = CONNECTIONS,
  { patience = OF_REQUESTS, itsOwn = {}, isDerived = false }: OpenOptions = {},
): Database {
  const options = {
    connectionString: withSettings(url, isDerived ? { ...RELIED_ON, synchronous_commit: 'off' } : RELIED_ON),
    max: connections,
    connectionTimeoutMillis: CONNECT_WITHIN_MS,
    application_name: 'slideload',
    ...patience,
    keepAlive: true,
    keepAliveInitialDelayMillis: KEEP_ALIVE_AFTER_MS,
  };
  const pool = new ScopedPool(options, itsOwn);
  // A connection that dies while idle is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined);
  // One that dies in somebody's hands between two statements too: the next statement says so to whoever holds it.
  pool.on('connect', (client) => client.on('error', () => undefined));
  return { pool, db: onPool(pool, pool) };
}

/** For each pool: a name for a plan is one for all its connections. */
const plannedTexts = new WeakMap<ScopedPool, PlannedTexts>();

/** Kysely on the connections of a pool, as they are or in a scope. */
function onPool(pool: ScopedPool, connections: Parameters<typeof plannedOnce>[0]): Kysely<Tables> {
  let texts = plannedTexts.get(pool);
  if (texts === undefined) {
    texts = new PlannedTexts();
    plannedTexts.set(pool, texts);
  }
  return new Kysely<Tables>({ dialect: new PostgresDialect({ pool: plannedOnce(connections, texts) }) });
}

/** The database as far as the scope reaches. Cheap: it opens nothing. */
export function inScope({ pool }: Pick<Database, 'pool'>, scope: RowScope): DatabaseInScope {
  const connect = () => pool.connectIn(scope);
  const query: Connections['query'] = async <Row extends pg.QueryResultRow>(asked: pg.QueryConfig) => {
    const client = await connect();
    try {
      const result = await client.query<Row>(asked);
      client.release();
      return result;
    } catch (error) {
      // What Postgres refused leaves the connection as it was; any other failure is the connection's own.
      client.release(!(error instanceof pg.DatabaseError));
      throw error;
    }
  };
  const scoped = { connect, query, end: async () => undefined };
  return { pool: scoped, db: onPool(pool, scoped) };
}
