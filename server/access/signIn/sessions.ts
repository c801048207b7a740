import { type Kysely, type Selectable, sql, type Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import type { SessionTable } from '../../../migrations/peopleTables.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { type PageAsked, pageById } from '../../paging.ts';
import { notFound, notSignedIn, wrongPassword } from '../../problems.ts';
import type { SessionPlace } from '../../schemas/access.ts';
import type { Person } from '../../schemas/session.ts';
import { accountInScope, type Scope } from '../scopes/scope.ts';
import { isToBeNoted } from '../tokens/isToBeNoted.ts';
import { newToken, type Token } from '../tokens/tokens.ts';

const SESSION_DAYS = 30;
/** A session that nobody used for so long ends before its time. */
const IDLE_DAYS = 14;
const DAY_MS = 86_400_000;

type SessionRow = Selectable<SessionTable>;
type WhoseSessions = Pick<Scope, 'accountId' | 'personId'>;

/** A person, and the hash of the password that let it in. */
export interface LetIn {
  readonly person: Person;
  readonly passwordHash: string;
}

/**
 * Begins a session and answers its token, which is not kept. Throws the 401 problem where the password that let the
 * person in is not its own any more: a change of it ends all sessions, and none that begins just then outlives it.
 */
export async function beginSession(
  database: Database,
  { person, passwordHash }: LetIn,
): Promise<{ token: string; expiresAt: Date }> {
  const { db } = inScope(database, { accounts: [person.accountId] });
  const { text, hash } = newToken('person', person.accountId);
  const expiresAt = new Date(Date.now() + SESSION_DAYS * DAY_MS);
  // Whoever changes the password holds its row before it ends the sessions, and waits for this one or is waited for.
  const { rows } = await sql`
    insert into sessions (account_id, id, token_hash, person_id, expires_at)
    select account_id, ${newId()}, ${hash}, id, ${expiresAt} from people
    where account_id = ${person.accountId} and id = ${person.id} and password_hash = ${passwordHash}
    for share
    returning id
  `.execute(db);
  if (rows.length === 0) throw wrongPassword();
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

/** Keeps the caller's own session until the transaction ends. Throws the 401 problem where it ended meanwhile. */
export async function holdSession(
  trx: Transaction<Tables>,
  { accountId }: Scope,
  token: Token | null,
): Promise<void> {
  await trx
    .selectFrom('sessions')
    .select('id')
    .where('account_id', '=', accountId)
    .where('token_hash', '=', token?.hash ?? null)
    .forKeyShare()
    .executeTakeFirstOrThrow(() => notSignedIn());
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
