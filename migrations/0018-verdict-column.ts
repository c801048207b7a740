import { type Kysely, sql } from 'kysely';

/**
 * The verdict of a room beside its summary, which is a hundred times as long: the lot asks every room of an account for
 * it, and for nothing else. It follows the summary by itself.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await sql`alter table room_progress add column verdict text
    generated always as (summary ->> 'verdict') stored`.execute(db);
}
