import { type Kysely, sql } from 'kysely';

/** Strokes that are sent while they happen, piece by piece, until they are whole or given up. */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  'alter table strokes add column cut_short boolean not null default false',
  `create table live_strokes (
    account_id uuid not null,
    id uuid not null,
    logger_id uuid not null,
    key text not null,
    room_id uuid not null,
    header jsonb not null,
    link_id uuid not null,
    next_seq integer not null default 0,
    touched_at timestamptz not null default now(),
    stored_at timestamptz,
    primary key (account_id, id),
    unique (account_id, logger_id, key),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,
  'create index live_strokes_by_room on live_strokes (account_id, room_id)',
  `create table live_pieces (
    account_id uuid not null,
    stroke_id uuid not null,
    seq integer not null,
    side smallint,
    first_sample integer not null,
    samples bytea not null,
    primary key (account_id, stroke_id, seq),
    foreign key (account_id, stroke_id) references live_strokes (account_id, id) on delete cascade
  )`,
  "select protect_by_account('live_strokes'), protect_by_account('live_pieces')",
  `create policy for_senders on live_strokes
    using (logger_id = any ((select senders_in_scope())::uuid[]))
    with check (logger_id = any ((select senders_in_scope())::uuid[])
      and room_id = any ((select rooms_to_send_to())::uuid[]))`,
  // Whoever sees the stroke, by the policies of its own table.
  `create policy of_stroke on live_pieces using (
    exists (select from live_strokes s where s.account_id = live_pieces.account_id and s.id = live_pieces.stroke_id))`,
  "comment on column strokes.cut_short is 'its sender went away before the end: what had come was stored'",
  "comment on column live_strokes.id is 'the id that the stroke gets when it is stored'",
  "comment on column live_strokes.header is 'what was said at its beginning: the stroke less its samples'",
  "comment on column live_strokes.link_id is 'the one link that may add to it: the latest that began it'",
  "comment on column live_strokes.stored_at is 'null: not whole yet; else it is in strokes, and goes from here soon'",
  "comment on column live_pieces.side is 'place in the sides of the header, from 0; null: the supply'",
  "comment on column live_pieces.first_sample is 'place of the first sample in its side, from 0'",
  "comment on column live_pieces.samples is 'doubles, little-endian: amperes (NaN: missed), or volts of the supply'",
];
