import type { ClientBase } from 'pg';

/** One table as the catalogue tells it. */
export interface TableShape {
  readonly name: string;
  /** Those that can be written. */
  readonly columns: readonly string[];
  /** What its rows are put in order by: the primary key, or all columns where there is none. */
  readonly order: readonly string[];
}

/** Tables of the migrator, which a backup names in its own way. */
const NOT_OURS = /^kysely_/;

/**
 * Every table of ours in an order in which it can be filled: what a foreign key refers to comes first. Partitions are
 * part of their table.
 */
export async function tablesInOrder(client: ClientBase): Promise<TableShape[]> {
  const { rows } = await client.query<{
    name: string;
    columns: string[];
    key: string[] | null;
    refers: string[];
  }>(`
    select c.relname as name,
      array(
        select a.attname::text from pg_attribute a
        where a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = ''
        order by a.attnum
      ) as columns,
      (
        select array_agg(a.attname::text order by k.place)
        from pg_index i
        cross join unnest(i.indkey::smallint[]) with ordinality as k (number, place)
        join pg_attribute a on a.attrelid = c.oid and a.attnum = k.number
        where i.indrelid = c.oid and i.indisprimary
      ) as key,
      array(
        select distinct r.relname::text from pg_constraint f join pg_class r on r.oid = f.confrelid
        where f.conrelid = c.oid and f.contype = 'f' and f.confrelid <> c.oid
      ) as refers
    from pg_class c
    where c.relnamespace = current_schema()::regnamespace and c.relkind in ('r', 'p') and not c.relispartition
    order by c.relname`);
  const waiting = rows.filter(({ name }) => !NOT_OURS.test(name));
  const ordered: TableShape[] = [];
  const done = new Set<string>();
  while (waiting.length > 0) {
    const next = waiting.findIndex(({ refers }) => refers.every((other) => done.has(other)));
    if (next < 0) throw new Error(`Tables refer to each other in a ring: ${waiting.map((t) => t.name)}`);
    const [{ name, columns, key }] = waiting.splice(next, 1);
    done.add(name);
    ordered.push({ name, columns, order: key ?? columns });
  }
  return ordered;
}

/** The statement that writes a table's rows as text, the same rows always in the same order and form. */
export function copyOut({ name, columns, order }: TableShape): string {
  return `copy (select ${list(columns)} from ${quoted(name)} order by ${list(order)}) to stdout`;
}

export function copyIn({ name, columns }: Pick<TableShape, 'name' | 'columns'>): string {
  return `copy ${quoted(name)} (${list(columns)}) from stdin`;
}

export function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

function list(names: readonly string[]): string {
  return names.map(quoted).join(', ');
}
