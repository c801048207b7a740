import type pg from 'pg';

/** What a coach brings along, in no order: references are not checked while it is copied. */
const TABLES = [
  'coaches',
  'loggers',
  'rooms',
  'services',
  'strokes',
  'traces',
  'measures',
  'room_progress',
  'room_results',
  'room_checkpoints',
  'lent_normals',
  'warnings',
  'verdict_changes',
];
/** Of people and accounts, which all copies share. */
const KEPT = new Set(['account_id', 'recorded_by', 'acknowledged_by']);
/** Every so manieth coach has its samples too. */
const TRACES_OF_ONE_IN = 50;

/**
 * Copies the only coach of a database until there are so many, row by row in bulk: the same histories under ids of
 * their own, which `copiedId` tells. Needs a superuser's connection.
 */
export async function copyCoach(client: pg.Client, coaches: number): Promise<void> {
  await client.query('begin');
  // No triggers: neither references nor the record of who did what.
  await client.query('set local session_replication_role = replica');
  for (const table of TABLES) {
    // What the coach was before it was copied.
    await client.query(`create temporary table model_row on commit drop as select * from ${table}`);
    const { rows } = await client.query<{ column_name: string; data_type: string }>(
      `select column_name, data_type from information_schema.columns
       where table_schema = current_schema and table_name = $1 and is_generated = 'NEVER' order by ordinal_position`,
      [table],
    );
    const names = rows.map(({ column_name }) => `"${column_name}"`);
    const values = rows.map(({ column_name, data_type }) => valueSql(table, column_name, data_type));
    const some = table === 'traces' ? `where n % ${TRACES_OF_ONE_IN} = 0` : '';
    await client.query(
      `insert into ${table} (${names.join()}) select ${values.join()}
       from generate_series(1, ${coaches - 1}) n, model_row ${some}`,
    );
    await client.query('drop table model_row');
  }
  await client.query('commit');
  await client.query('vacuum analyze');
}

function valueSql(table: string, column: string, type: string): string {
  if (column === 'token_hash') return `sha256(token_hash || n::text::bytea)`;
  if (table === 'coaches' && column === 'name') return `name || ' ' || lpad(n::text, 4, '0')`;
  if (type === 'uuid' && !KEPT.has(column)) return copiedIdSql(`"${column}"`);
  return `"${column}"`;
}

/** A UUID (version 7 by its marks) that follows from the model's and the number of the copy; null stays null. */
function copiedIdSql(column: string): string {
  const hash = `md5(${column}::text || '/' || n)`;
  return `overlay(overlay(${hash} placing '7' from 13) placing '8' from 17)::uuid`;
}

/** Ids of the `n`th copy of things of the model, in the order in which they were asked for. */
export async function copiedIds(client: pg.Client, ids: readonly string[], n: number): Promise<string[]> {
  const { rows } = await client.query<{ id: string }>(
    `select ${copiedIdSql('model')} as id from unnest($1::text[]) with ordinality as m (model, place),
       (select $2::integer as n) number order by place`,
    [ids, n],
  );
  return rows.map(({ id }) => id);
}
