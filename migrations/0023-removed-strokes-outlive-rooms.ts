import { type Kysely, sql } from 'kysely';

/**
 * A key is its logger's, whatever room its stroke went to last: what a person removed stays removed when the room goes
 * that it stood in, and goes from here with the coach or the logger.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  'alter table removed_strokes add column coach_id uuid',
  `update removed_strokes d set coach_id = r.coach_id
    from rooms r where r.account_id = d.account_id and r.id = d.room_id`,
  // It goes by the columns that the table has.
  'drop policy by_account on removed_strokes',
  'alter table removed_strokes drop column room_id',
  `alter table removed_strokes alter column coach_id set not null,
    add foreign key (account_id, coach_id) references coaches (account_id, id) on delete cascade`,
  'create index removed_strokes_by_coach on removed_strokes (account_id, coach_id)',
  "select protect_by_account('removed_strokes')",
  `comment on table removed_strokes is
    'what people removed, by itself or with its room, so that it does not come back when it is sent again'`,
];
