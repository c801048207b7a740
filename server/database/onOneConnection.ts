import { Kysely, PostgresDialect } from 'kysely';
import type { PoolClient } from 'pg';
import type { Connections } from '../../ingest/queries.ts';
import type { Tables } from '../../migrations/tables.ts';

/**
 * One connection both as Kysely and as the plain client that strokes are stored through, so that a transaction which
 * is begun by the one also holds what the other does.
 */
export async function onOneConnection<Result>(
  pool: Pick<Connections, 'connect'>,
  work: (db: Kysely<Tables>, client: PoolClient) => Promise<Result>,
): Promise<Result> {
  const client = await pool.connect();
  const giveBack = client.release.bind(client);
  // Kysely gives its connection back after each transaction: this one is ours until all is done.
  client.release = () => undefined;
  const onlyThis = { connect: async () => client, end: async () => undefined };
  const db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool: onlyThis }) });
  return work(db, client).finally(() => giveBack());
}
