import { type Kysely, sql } from 'kysely';

/**
 * The state in a checkpoint is compressed by whoever writes it: it is written anew with nearly every stroke, and the
 * database's own compression took longer than all the rest of it. Those of before are not read any more: their rooms
 * count as made by another version of the analysis, and are made anew at the next start.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  "alter table room_checkpoints alter column state type bytea using ''::bytea",
  'alter table room_checkpoints alter column state set storage external',
  'update room_checkpoints set analysis_version = 0',
  "comment on column room_checkpoints.state is 'the state of the room as JSON, compressed by Brotli (RFC 7932)'",
];
