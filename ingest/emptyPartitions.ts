import type { Connections, Queries } from './queries.ts';

/**
 * Drops the months of samples that are past and hold nothing any more, which gives their room on the disk back. Nobody
 * adds to them: samples go by the time of their arrival.
 */
export async function dropEmptyPartitions(pool: Connections, now: Date): Promise<string[]> {
  const month = `traces_${now.toISOString().slice(0, 7).replace('-', '_')}`;
  const { rows } = await pool.query<{ name: string }>({
    text: `select c.relname as name from pg_inherits i join pg_class c on c.oid = i.inhrelid
     where i.inhparent = 'traces'::regclass and c.relname ~ '^traces_\\d{4}_\\d{2}$' and c.relname < $1
     order by c.relname`,
    values: [month],
  });
  const dropped: string[] = [];
  for (const { name } of rows) {
    if (!(await isEmpty(pool, name))) continue;
    if (await dropIfEmpty(pool, name)) dropped.push(name);
  }
  return dropped;
}

async function dropIfEmpty(pool: Connections, name: string): Promise<boolean> {
  const client = await pool.connect();
  try {
    await client.query('begin');
    // In the order in which a sender's statement takes them: the other way round both would wait for each other.
    await client.query('lock table strokes in share row exclusive mode');
    await client.query('lock table traces in access exclusive mode');
    const empty = await isEmpty(client, name);
    if (empty) await client.query(`drop table ${name}`);
    await client.query('commit');
    return empty;
  } catch (error) {
    await client.query('rollback');
    throw error;
  } finally {
    client.release();
  }
}

/** The name is one that the catalogue gave for a month of ours. Throws for a pool to which a full month looks empty. */
async function isEmpty(client: Queries, name: string): Promise<boolean> {
  const { rows } = await client.query<{ empty: boolean; sees_all: boolean }>({
    text: `select not exists (select from ${name}) as empty, spans_accounts() as sees_all`,
  });
  if (!rows[0].sees_all) throw new TypeError('Only who sees the samples of every account may drop months.');
  return rows[0].empty;
}
