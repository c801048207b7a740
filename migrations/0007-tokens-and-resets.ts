import { type Kysely, sql } from 'kysely';

/** Tokens that people give to their scripts, and links that set a forgotten password anew. */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  `create table personal_tokens (
    account_id uuid not null,
    id uuid not null,
    person_id uuid not null,
    name text not null,
    token_hash bytea not null,
    may_change boolean not null,
    until timestamptz not null,
    created_at timestamptz not null default now(),
    last_seen_at timestamptz,
    primary key (account_id, id),
    unique (account_id, token_hash),
    foreign key (account_id, person_id) references people (account_id, id) on delete cascade
  )`,
  'create index personal_tokens_by_person on personal_tokens (account_id, person_id, id)',
  `create table password_resets (
    account_id uuid not null,
    token_hash bytea not null,
    person_id uuid not null,
    expires_at timestamptz not null,
    created_at timestamptz not null default now(),
    primary key (account_id, token_hash),
    foreign key (account_id, person_id) references people (account_id, id) on delete cascade
  )`,
  'create index password_resets_by_person on password_resets (account_id, person_id)',
  "select protect_by_account(name::regclass) from unnest(array['personal_tokens', 'password_resets']) name",
  "comment on column personal_tokens.may_change is 'false: it may only read'",
];
