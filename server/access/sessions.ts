import type { Kysely } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { accountInScope, type Scope } from './scope.ts';
import { newToken, type Token } from './tokens.ts';

export const SESSION_DAYS = 30;
const DAY_MS = 86_400_000;

/** Begins a session and answers its token, which is not kept. */
export async function beginSession(
  db: Kysely<Tables>,
  person: { accountId: string; id: string },
): Promise<{ token: string; expiresAt: Date }> {
  const { text, hash } = newToken('person', person.accountId);
  const expiresAt = new Date(Date.now() + SESSION_DAYS * DAY_MS);
  await db
    .insertInto('sessions')
    .values({ account_id: person.accountId, token_hash: hash, person_id: person.id, expires_at: expiresAt })
    .execute();
  return { token: text, expiresAt };
}

/** The person whose session the token is; null when it is none, or over. */
export async function personOfToken(db: Kysely<Tables>, token: Token): Promise<Scope | null> {
  const found = await db
    .selectFrom('sessions')
    .innerJoin('people', (join) =>
      join
        .onRef('people.account_id', '=', 'sessions.account_id')
        .onRef('people.id', '=', 'sessions.person_id'),
    )
    .select(['people.id', 'people.role'])
    .where('sessions.account_id', '=', token.accountId)
    .where('sessions.token_hash', '=', token.hash)
    .where('sessions.expires_at', '>', new Date())
    .executeTakeFirst();
  if (found === undefined) return null;
  return { kind: 'person', accountId: accountInScope(token.accountId), personId: found.id, role: found.role };
}

export async function endSession(db: Kysely<Tables>, token: Token): Promise<void> {
  await db
    .deleteFrom('sessions')
    .where('account_id', '=', token.accountId)
    .where('token_hash', '=', token.hash)
    .execute();
}
