import { type Kysely, sql } from 'kysely';

/** Who else may see a coach, links by which people join, and sessions that can be listed and ended one by one. */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  'create unique index people_by_email on people (account_id, email)',
  // Who acknowledged a warning may be of another account than the warning.
  'create index directory_by_person on directory (person_id)',
  'alter table sessions add column id uuid not null default gen_random_uuid()',
  'create unique index sessions_by_id on sessions (account_id, id)',
  'create index sessions_by_person on sessions (account_id, person_id)',
  `create table grants (
    account_id uuid not null,
    id uuid not null,
    coach_id uuid not null,
    email text not null check (email = lower(email)),
    role text not null check (role in ('owner', 'technician')),
    until timestamptz,
    person_id uuid,
    created_at timestamptz not null default now(),
    primary key (account_id, id),
    foreign key (account_id, coach_id) references coaches (account_id, id) on delete cascade
  )`,
  'create index grants_by_coach on grants (account_id, coach_id, id)',
  // Asked before the account of the coach is known.
  'create index grants_by_person on grants (person_id) where person_id is not null',
  `create table invitations (
    account_id uuid not null,
    token_hash bytea not null,
    person_id uuid,
    grant_id uuid,
    expires_at timestamptz not null,
    created_at timestamptz not null default now(),
    primary key (account_id, token_hash),
    check ((person_id is null) <> (grant_id is null)),
    foreign key (account_id, person_id) references people (account_id, id) on delete cascade,
    foreign key (account_id, grant_id) references grants (account_id, id) on delete cascade
  )`,
  'create index invitations_by_person on invitations (account_id, person_id)',
  'create index invitations_by_grant on invitations (account_id, grant_id)',
  "comment on column grants.account_id is 'of the coach'",
  "comment on column grants.person_id is 'of another account; null until the invitation is accepted'",
  "comment on column grants.until is 'null: until it is taken back'",
];
