import { type Kysely, type Selectable, sql, type Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import type { PersonalTokenTable } from '../../../migrations/peopleTables.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { takeTurn } from '../../database/takeTurn.ts';
import { type PageAsked, pageById } from '../../paging.ts';
import { notFound, ProblemError } from '../../problems.ts';
import type { NewPersonalToken, PersonalToken, PersonalTokenBody } from '../../schemas/personalToken.ts';
import { accountInScope, type Scope } from '../scopes/scope.ts';
import { holdSession } from '../signIn/sessions.ts';
import { isToBeNoted } from '../tokens/isToBeNoted.ts';
import { newToken, type Token } from '../tokens/tokens.ts';

/** A person's tokens are few: more than this are a script gone wrong. */
const MOST_TOKENS = 50;

/** The person who gave the token to a script; null when it is none, or over. */
export async function personOfScript(database: Database, token: Token): Promise<Scope | null> {
  const { db } = inScope(database, { accounts: [token.accountId] });
  const found = await db
    .selectFrom('personal_tokens as t')
    .innerJoin('people as p', (join) =>
      join.onRef('p.account_id', '=', 't.account_id').onRef('p.id', '=', 't.person_id'),
    )
    .select(['p.id', 'p.role', 't.id as tokenId', 't.may_change', 't.last_seen_at'])
    .where('t.account_id', '=', token.accountId)
    .where('t.token_hash', '=', token.hash)
    .where(sql<boolean>`t.until > now()`)
    .executeTakeFirst();
  if (found === undefined) return null;
  if (isToBeNoted(found.last_seen_at))
    await db
      .updateTable('personal_tokens')
      .set({ last_seen_at: sql`now()` })
      .where('account_id', '=', token.accountId)
      .where('id', '=', found.tokenId)
      .execute();
  return {
    kind: 'person',
    accountId: accountInScope(token.accountId),
    personId: found.id,
    role: found.role,
    script: { mayChange: found.may_change },
  };
}

/** Made in a session. The token is answered here and nowhere else: only its hash is kept. */
export async function createPersonalToken(
  trx: Transaction<Tables>,
  person: Scope,
  session: Token | null,
  body: PersonalTokenBody,
): Promise<NewPersonalToken> {
  // What ends every session and every token of the person ends this one with them, or comes first.
  await holdSession(trx, person, session);
  await takeTurn(trx, `tokens ${person.personId}`);
  const { count } = await living(trx, person)
    .select(({ fn }) => fn.countAll<string>().as('count'))
    .executeTakeFirstOrThrow();
  if (Number(count) >= MOST_TOKENS)
    throw new ProblemError('conflict', `A person has at most ${MOST_TOKENS} tokens: end some first.`);
  const { text, hash } = newToken('script', person.accountId);
  const row = await trx
    .insertInto('personal_tokens')
    .values({
      account_id: person.accountId,
      id: newId(),
      person_id: person.personId,
      name: body.name,
      token_hash: hash,
      may_change: body.mayChange,
      until: body.until,
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  return { ...personalTokenOf(row), token: text };
}

/** Those that have not run out, the latest first. */
export function listPersonalTokens(db: Kysely<Tables>, person: Scope, asked: PageAsked) {
  const list = `tokens of ${person.personId}`;
  return pageById(living(db, person).selectAll(), { list, ...asked }, personalTokenOf, 'latest-first');
}

export async function endPersonalToken(db: Kysely<Tables>, person: Scope, id: string): Promise<void> {
  await db
    .deleteFrom('personal_tokens')
    .where('account_id', '=', person.accountId)
    .where('person_id', '=', person.personId)
    .where('id', '=', id)
    .returning('id')
    .executeTakeFirstOrThrow(() => notFound('token'));
}

/** The person's tokens that have not run out: nobody is shown the others. */
function living(db: Kysely<Tables>, person: Scope) {
  return db
    .selectFrom('personal_tokens')
    .where('account_id', '=', person.accountId)
    .where('person_id', '=', person.personId)
    .where(sql<boolean>`until > now()`);
}

type PersonalTokenRow = Selectable<PersonalTokenTable>;

function personalTokenOf({
  id,
  name,
  may_change,
  until,
  created_at,
  last_seen_at,
}: PersonalTokenRow): PersonalToken {
  return {
    id,
    name,
    mayChange: may_change,
    until: until.toISOString(),
    createdAt: created_at.toISOString(),
    lastSeenAt: last_seen_at?.toISOString() ?? null,
  };
}
