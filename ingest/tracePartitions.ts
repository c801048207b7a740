import type { PoolClient } from 'pg';
import { inClientTransaction } from './inClientTransaction.ts';
import type { Connections, Queries } from './queries.ts';

const MONTHS_AHEAD = 2;

/** What the partition of the month is called that a time lies in; in their order, which is that of months. */
export function partitionOf(time: Date): string {
  return `traces_${time.toISOString().slice(0, 7).replace('-', '_')}`;
}

/** SQL for the names of all partitions of a month, of rows of `pg_class as c`. */
export const PARTITIONS = `pg_inherits i join pg_class c on c.oid = i.inhrelid
  where i.inhparent = 'traces'::regclass and c.relname ~ '^traces_\\d{4}_\\d{2}$'`;

/**
 * Sees to it that the samples of this month and the next two have partitions of their own, so that old months can be
 * detached and moved. Rows of such a month that went to the default partition meanwhile are moved over. Any number of
 * processes may call it at once.
 */
export async function ensureTracePartitions(pool: Connections, now: Date): Promise<void> {
  for (let ahead = 0; ahead <= MONTHS_AHEAD; ahead++)
    await ensureTraceMonth(pool, new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + ahead, 1)));
}

/** The same for the one month that a time lies in. */
export async function ensureTraceMonth(pool: Connections, time: Date): Promise<void> {
  const from = new Date(Date.UTC(time.getUTCFullYear(), time.getUTCMonth(), 1));
  const to = new Date(Date.UTC(time.getUTCFullYear(), time.getUTCMonth() + 1, 1));
  await ensurePartition(pool, from, to);
}

async function ensurePartition(pool: Connections, from: Date, to: Date): Promise<void> {
  const name = partitionOf(from);
  if (await exists(pool, name)) return;
  await inClientTransaction(pool, async (client) => {
    await client.query('set local statement_timeout = 0');
    await client.query(`select pg_advisory_xact_lock(hashtextextended('trace partitions', 0))`);
    if (!(await exists(client, name))) await createPartition(client, name, from, to);
  });
}

async function createPartition(client: PoolClient, name: string, from: Date, to: Date): Promise<void> {
  const [start, end] = [from.toISOString(), to.toISOString()];
  await client.query(
    `create table ${name} (like traces including defaults including constraints including storage)`,
  );
  // Nobody may add to this month in between. First the table that a sender's statement locks first: the foreign key
  // of the new partition needs it too, and the other way round both would wait for each other.
  await client.query('lock table strokes in share row exclusive mode');
  await client.query('lock table traces_default in access exclusive mode');
  await client.query(
    `with moved as (
      delete from traces_default where received_at >= $1::timestamptz and received_at < $2::timestamptz returning *
    ) insert into ${name} select * from moved`,
    [start, end],
  );
  // A backup may be of a schema without; the migration that brings it protects what is there.
  const { rows } = await client.query<{ known: boolean }>(
    "select to_regproc('protect_by_account') is not null as known",
  );
  if (rows[0].known) await client.query('select protect_by_account($1::regclass)', [name]);
  await client.query(
    `alter table traces attach partition ${name} for values from ('${start}') to ('${end}')`,
  );
}

/** Asks the catalogue's table: `to_regclass` may answer from before the lock. */
async function exists(client: Queries, name: string): Promise<boolean> {
  const { rows } = await client.query<{ found: boolean }>({
    text: `select exists (
      select from pg_class where relname = $1 and relnamespace = current_schema()::regnamespace
    ) as found`,
    values: [name],
  });
  return rows[0].found;
}
