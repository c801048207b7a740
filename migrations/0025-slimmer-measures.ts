import { type Kysely, sql } from 'kysely';

/**
 * What a baseline foresees of a stroke, and a value brought to common conditions, are estimates that are known to three
 * digits: single precision keeps seven, in half the room. What was measured stays as it was. Whether a measure lies
 * beyond its limits is one bit of a number instead of a place of a list.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  // What single precision cannot hold is next to nothing, or no current at all.
  `create function in_single_precision(numbers double precision[]) returns real[] language sql immutable as $$
    select coalesce(array_agg(
      (case when abs(x) < 1e-37 then 0 when abs(x) <= 3e38 then x end)::real order by place
    ), '{}') from unnest(numbers) with ordinality as u (x, place) $$`,
  `create function as_bits(flags boolean[]) returns integer language sql immutable as $$
    select coalesce(sum(1 << (place::integer - 1)) filter (where flag), 0)::integer
    from unnest(flags) with ordinality as u (flag, place) $$`,
  `alter table measures
    alter column expected type real[] using in_single_precision(expected),
    alter column adjusted type real[] using in_single_precision(adjusted),
    alter column beyond type integer using as_bits(beyond)`,
  'drop function in_single_precision(double precision[]), as_bits(boolean[])',
  "comment on column measures.beyond is 'a bit for each measure, the lowest for the first of analysis/measures.ts'",
];
