import type { FastifyReply, FastifyRequest } from 'fastify';
import { inScope } from '../../database/openDatabase.ts';
import { readToken } from '../tokens/tokens.ts';
import { sessionCookieOf, setSessionCookie } from './sessionCookie.ts';
import { beginSession, endSession, type LetIn, personOfToken } from './sessions.ts';

/** Begins a session of the person in the browser or program that asked, and is what that is answered (`SignedIn`). */
export async function signedIn(reply: FastifyReply, letIn: LetIn) {
  const session = await beginSession(reply.server.database, letIn);
  const { person } = letIn;
  setSessionCookie(reply.request, reply, session);
  return { person, token: session.token };
}

/** Signing in again in a browser ends the session that it had there: an old cookie is worth nothing any more. */
export async function endReplaced(request: FastifyRequest, personId: string): Promise<void> {
  const { database } = request.server;
  const cookie = sessionCookieOf(request);
  const token = cookie === undefined ? null : readToken(cookie);
  if (token?.kind !== 'person') return;
  const before = await personOfToken(database, token);
  if (before?.personId !== personId) return;
  await endSession(inScope(database, { accounts: [token.accountId] }).db, token);
}
