import { type Kysely, sql } from 'kysely';

/**
 * A stroke may come with its analysis, made by whoever received it from what it knows of the room. Whether that was
 * still true can only be told once the room's progress is held: what was not is marked here, to be made again.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  'alter table room_progress add column measured_by text, add column remeasure_from timestamptz',
  `comment on column room_progress.measured_by is
    'names the analysis and the description of the room that its strokes are measured by; null: not known yet'`,
  `comment on column room_progress.remeasure_from is
    'strokes from this time on may have been measured by another; null: none'`,
];
