import { type Scope, scopeOf } from '../access/scopes/scope.ts';
import { personOfToken } from '../access/signIn/sessions.ts';
import type { Token } from '../access/tokens/tokens.ts';
import type { Database } from '../database/openDatabase.ts';
import { notSignedIn } from '../problems.ts';

/**
 * The scope in which whoever holds the token sees the room, asked anew for everything that is pushed: sessions and
 * grants end while sockets stay open. Throws the 401 problem when the session is over, and the 404 problem for a
 * room that is not theirs to see, whether it exists or not.
 */
export async function sightOf(database: Database, token: Token | null, roomId: string): Promise<Scope> {
  return scopeOf(database, await holderOf(database, token), 'rooms', roomId);
}

/** The person who holds the token. Throws the 401 problem for a logger's, and for one that is none or over. */
export async function holderOf(database: Database, token: Token | null): Promise<Scope> {
  const person = token?.kind === 'person' ? await personOfToken(database, token) : null;
  if (person === null) throw notSignedIn();
  return person;
}
