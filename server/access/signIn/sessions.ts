import { type Kysely, type Selectable, sql } from 'kysely';
import { v7 as newId } from 'uuid';
import type { SessionTable } from '../../../migrations/peopleTables.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { type PageAsked, pageById } from '../../paging.ts';
import { notFound } from '../../problems.ts';
import type { SessionPlace } from '../../schemas/access.ts';
import { accountInScope, type Scope } from '../scopes/scope.ts';
import { isToBeNoted } from '../tokens/isToBeNoted.ts';
import { newToken, type Token } from '../tokens/tokens.ts';

const SESSION_DAYS = 30;
/** A session that nobody used for so long ends before its time. */
const IDLE_DAYS = 14;
const DAY_MS = 86_400_000;

type SessionRow = Selectable<SessionTable>;
type WhoseSessions = Pick<Scope, 'accountId' | 'personId'>;

/** Begins a session and answers its token, which is not kept. */
export async function beginSession(
  database: Database,
  person: { accountId: string; id: string },
): Promise<{ token: string; expiresAt: Date }> {
  const { db } = inScope(database, { accounts: [person.accountId] });
  const { text, hash } = newToken('person', person.accountId);
  const expiresAt = new Date(Date.now() + SESSION_DAYS * DAY_MS);
  await db
    .insertInto('sessions')
    .values({
      account_id: person.accountId,
      id: newId(),
      token_hash: hash,
      person_id: person.id,
      expires_at: expiresAt,
    })
    .execute();
  return { token: text, expiresAt };
}

/** The person whose session the token is; null when it is none, or over. */
export async function personOfToken(database: Database, token: Token): Promise<Scope | null> {
  const { db } = inScope(database, { accounts: [token.accountId] });
  const found = await db
    .selectFrom('sessions')
    .innerJoin('people', (join) =>
      join
        .onRef('people.account_id', '=', 'sessions.account_id')
        .onRef('people.id', '=', 'sessions.person_id'),
    )
    .select(['people.id', 'people.role', 'sessions.last_seen_at'])
    .where('sessions.account_id', '=', token.accountId)
    .where('sessions.token_hash', '=', token.hash)
    .where('sessions.expires_at', '>', new Date())
    .where('sessions.last_seen_at', '>', idleBefore())
    .executeTakeFirst();
  if (found === undefined) return null;
  if (isToBeNoted(found.last_seen_at)) await noteSeen(db, token);
  return {
    kind: 'person',
    accountId: accountInScope(token.accountId),
    personId: found.id,
    role: found.role,
  };
}

function idleBefore(): Date {
  return new Date(Date.now() - IDLE_DAYS * DAY_MS);
}

async function noteSeen(db: Kysely<Tables>, token: Token): Promise<void> {
  await db
    .updateTable('sessions')
    .set({ last_seen_at: sql`now()` })
    .where('account_id', '=', token.accountId)
    .where('token_hash', '=', token.hash)
    .execute();
}

export async function endSession(db: Kysely<Tables>, token: Token): Promise<void> {
  await db
    .deleteFrom('sessions')
    .where('account_id', '=', token.accountId)
    .where('token_hash', '=', token.hash)
    .execute();
}

/** Where the person is signed in, the latest first; `current` is the token that asks. */
export function listSessions(db: Kysely<Tables>, person: Scope, current: Token | null, asked: PageAsked) {
  const query = db
    .selectFrom('sessions')
    .selectAll()
    .where('account_id', '=', person.accountId)
    .where('person_id', '=', person.personId)
    .where('expires_at', '>', new Date())
    .where('last_seen_at', '>', idleBefore());
  const list = `sessions of ${person.personId}`;
  return pageById(query, { list, ...asked }, (row) => sessionPlaceOf(row, current), 'latest-first');
}

function sessionPlaceOf(row: SessionRow, current: Token | null): SessionPlace {
  return {
    id: row.id,
    current: current !== null && row.token_hash.equals(current.hash),
    createdAt: row.created_at.toISOString(),
    lastSeenAt: row.last_seen_at.toISOString(),
    expiresAt: row.expires_at.toISOString(),
  };
}

/** Ends one of the person's sessions. */
export async function endSessionById(db: Kysely<Tables>, person: Scope, id: string): Promise<void> {
  await endings(db, person)
    .where('id', '=', id)
    .returning('id')
    .executeTakeFirstOrThrow(() => notFound('session'));
}

/** Signs the person out everywhere, save where `except` was given. */
export async function endSessions(
  db: Kysely<Tables>,
  person: WhoseSessions,
  except: Token | null = null,
): Promise<void> {
  const all = endings(db, person);
  await (except === null ? all : all.where('token_hash', '<>', except.hash)).execute();
}

function endings(db: Kysely<Tables>, person: WhoseSessions) {
  return db
    .deleteFrom('sessions')
    .where('account_id', '=', person.accountId)
    .where('person_id', '=', person.personId);
}
