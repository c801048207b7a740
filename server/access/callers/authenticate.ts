import type { FastifyRequest } from 'fastify';
import type { Database } from '../../database/openDatabase.ts';
import { notSignedIn } from '../../problems.ts';
import type { Caller } from '../scopes/caller.ts';
import { isFromOwnPages, refuseForeignPage } from '../signIn/sameOrigin.ts';
import { sessionCookieOf } from '../signIn/sessionCookie.ts';
import { personOfToken } from '../signIn/sessions.ts';
import { readToken, type Token } from '../tokens/tokens.ts';
import { holdScript } from './holdScript.ts';
import { loggerOfToken } from './loggerTokens.ts';
import { personOfScript } from './personalTokens.ts';

/**
 * Finds out who sends the request, before its body is read. A route is for people who signed in unless it says
 * otherwise; a logger's token opens only routes for senders.
 */
export async function authenticate(database: Database, request: FastifyRequest): Promise<void> {
  const access = request.routeOptions.config.access ?? 'person';
  if (request.is404 || access === 'public') return;
  const token = tokenOf(request);
  const caller = await callerOfToken(database, token);
  if (caller === null) throw notSignedIn();
  if (caller.kind === 'logger' && access !== 'sender') throw notSignedIn();
  if (token?.kind === 'script') holdScript(request, caller);
  request.caller = caller;
}

/** The token in the Authorization header, else the cookie's; a cookie counts only from our own pages. */
export function tokenOf(request: FastifyRequest): Token | null {
  const { authorization } = request.headers;
  if (authorization !== undefined) {
    const [, text] = /^bearer +(\S+) *$/i.exec(authorization) ?? [];
    return text === undefined ? null : readToken(text);
  }
  const cookie = sessionCookieOf(request);
  if (cookie === undefined) return null;
  refuseForeignPage(request);
  return readToken(cookie);
}

/**
 * The token that the opening of a WebSocket brings; undefined where it brings none and the first message must. Other
 * sites' pages may open one and read what it says, which no browser forbids them: there a cookie, which its person did
 * not send, counts for nothing.
 */
export function tokenOfOpening(request: FastifyRequest): Token | null | undefined {
  if (request.headers.authorization !== undefined) return tokenOf(request);
  return (isFromOwnPages(request) ? tokenOf(request) : null) ?? undefined;
}

async function callerOfToken(database: Database, token: Token | null): Promise<Caller | null> {
  switch (token?.kind) {
    case 'person':
      return personOfToken(database, token);
    case 'logger':
      return loggerOfToken(database, token);
    case 'script':
      return personOfScript(database, token);
    default:
      return null;
  }
}
