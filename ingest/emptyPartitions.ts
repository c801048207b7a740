import { inClientTransaction } from './inClientTransaction.ts';
import type { Connections, Queries } from './queries.ts';
import { PARTITIONS, partitionOf } from './tracePartitions.ts';

/**
 * Drops the months of samples that are past and hold nothing any more, which gives their room on the disk back. Nobody
 * adds to them: samples go by the time of their arrival.
 */
export async function dropEmptyPartitions(pool: Connections, now: Date): Promise<string[]> {
  const { rows } = await pool.query<{ name: string }>({
    text: `select c.relname as name from ${PARTITIONS} and c.relname < $1 order by c.relname`,
    values: [partitionOf(now)],
  });
  const dropped: string[] = [];
  for (const { name } of rows) {
    if (!(await isEmpty(pool, name))) continue;
    if (await dropIfEmpty(pool, name)) dropped.push(name);
  }
  return dropped;
}

function dropIfEmpty(pool: Connections, name: string): Promise<boolean> {
  return inClientTransaction(pool, async (client) => {
    // In the order in which a sender's statement takes them: the other way round both would wait for each other.
    await client.query('lock table strokes in share row exclusive mode');
    await client.query('lock table traces in access exclusive mode');
    const empty = await isEmpty(client, name);
    if (empty) await client.query(`drop table ${name}`);
    return empty;
  });
}

/** The name is one that the catalogue gave for a month of ours. Throws for a pool to which a full month looks empty. */
async function isEmpty(client: Queries, name: string): Promise<boolean> {
  const { rows } = await client.query<{ empty: boolean; sees_all: boolean }>({
    text: `select not exists (select from ${name}) as empty, spans_accounts() as sees_all`,
  });
  if (!rows[0].sees_all) throw new TypeError('Only who sees the samples of every account may drop months.');
  return rows[0].empty;
}
