import { type Kysely, sql } from 'kysely';

/** What each room has learnt from its own strokes alone, found by those who may borrow it. */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  // A row outlives its room until those who borrowed it were told: no foreign key to rooms.
  `create table lent_normals (
    account_id uuid not null references accounts (id) on delete cascade,
    room_id uuid not null,
    place smallint not null,
    direction text not null check (direction in ('extend', 'retract')),
    peers uuid not null,
    namesakes uuid not null,
    learnt_at timestamptz,
    normal json,
    primary key (account_id, room_id, place, direction),
    check ((learnt_at is null) = (normal is null))
  )`,
  'create index lent_normals_by_peers on lent_normals (account_id, peers, place, direction, learnt_at, room_id)',
  `create index lent_normals_by_namesakes on lent_normals (account_id, namesakes, place, direction, learnt_at,
    room_id)`,
  "comment on column lent_normals.place is 'of the side in the sides of the room, from 0'",
  "comment on column lent_normals.peers is 'the same for rooms of one coach model, drive and sides'",
  "comment on column lent_normals.namesakes is 'the same for those of them with the same name'",
  "comment on column lent_normals.learnt_at is 'of the last stroke that it is made of; null: still learning'",
  "comment on column lent_normals.normal is 'by index of MEASURES; analysis/baseline/lending.ts'",
  "select protect_by_account('lent_normals')",
];
