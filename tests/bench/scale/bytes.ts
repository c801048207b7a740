import type pg from 'pg';

/** What a thing takes on disk with its indexes, bytes, by the tables that hold it. */
export interface BytesOf {
  readonly thing: string;
  readonly things: number;
  readonly bytes: number;
}

/** The rows that are counted first; the other tables grow with it. */
const THINGS: Readonly<Record<string, readonly string[]>> = {
  'a stroke, less its samples': ['strokes', 'measures'],
  "a stroke's samples": ['traces'],
  'a room, with its state': [
    'rooms',
    'room_progress',
    'room_results',
    'room_checkpoints',
    'lent_normals',
    'verdict_changes',
  ],
  'a coach and its logger': ['coaches', 'loggers'],
};

/** Counts and sizes as the server knows them after `analyze`. */
export async function bytesOf(client: pg.Client): Promise<BytesOf[]> {
  const found: BytesOf[] = [];
  for (const [thing, tables] of Object.entries(THINGS)) {
    const { rows } = await client.query<{ things: string; bytes: string }>(
      `select (select count(*) from ${tables[0]}) as things,
         sum(coalesce(
           (select sum(pg_total_relation_size(relid)) from pg_partition_tree(name::regclass) where isleaf),
           pg_total_relation_size(name::regclass)
         )) as bytes
       from unnest($1::text[]) as whole (name)`,
      [tables],
    );
    found.push({ thing, things: Number(rows[0].things), bytes: Number(rows[0].bytes) });
  }
  return found;
}
