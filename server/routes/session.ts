import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { tokenOf } from '../access/callers/authenticate.ts';
import { findPerson } from '../access/people/people.ts';
import { personOf } from '../access/scopes/caller.ts';
import { refuseForeignPage } from '../access/signIn/sameOrigin.ts';
import { clearSessionCookie, sessionCookieOf } from '../access/signIn/sessionCookie.ts';
import { endSession, personOfToken } from '../access/signIn/sessions.ts';
import { signIn } from '../access/signIn/signIn.ts';
import { readToken } from '../access/tokens/tokens.ts';
import type { App } from '../appTypes.ts';
import { inScope } from '../database/openDatabase.ts';
import { limitFailures } from '../limits/failures.ts';
import { Person, SignedIn, SignInBody } from '../schemas/session.ts';
import { NO_CONTENT } from './answers.ts';
import { signedIn } from './signedIn.ts';

/** Signing in again in a browser ends the session that it had there: an old cookie is worth nothing any more. */
async function endReplaced(app: App, request: FastifyRequest, personId: string): Promise<void> {
  const cookie = sessionCookieOf(request);
  const token = cookie === undefined ? null : readToken(cookie);
  if (token?.kind !== 'person') return;
  const before = await personOfToken(app.database, token);
  if (before?.personId !== personId) return;
  await endSession(inScope(app.database, { accounts: [token.accountId] }).db, token);
}

export async function sessionRoutes(app: App): Promise<void> {
  const failures = limitFailures(app, app.limits.wrongSignInsPerMinute);
  app.post(
    '/api/v1/session',
    {
      schema: {
        tags: ['session'],
        operationId: 'signIn',
        summary: 'Sign in',
        body: SignInBody,
        response: { 200: SignedIn },
      },
      config: {
        access: 'public',
        problems: ['wrong-password', 'too-many-attempts'],
      },
      onRequest: failures.refuse,
    },
    async (request, reply) => {
      refuseForeignPage(request);
      const { email, password } = request.body;
      const person = await failures.counting(request, () => signIn(app.database, email, password));
      const answer = await signedIn(app, reply, person);
      await endReplaced(app, request, person.id);
      return answer;
    },
  );

  app.get(
    '/api/v1/session',
    {
      schema: {
        tags: ['session'],
        summary: 'Who is signed in',
        response: { 200: z.object({ person: Person }) },
      },
    },
    async (request) => ({ person: await findPerson(request.db, personOf(request)) }),
  );

  app.delete(
    '/api/v1/session',
    {
      schema: {
        tags: ['session'],
        operationId: 'signOut',
        summary: 'Sign out',
        response: { 204: NO_CONTENT },
      },
      // A script has no session that it could end.
      config: { byHand: true },
    },
    async (request, reply) => {
      const token = tokenOf(request);
      if (token !== null) await endSession(request.db, token);
      clearSessionCookie(request, reply);
      return reply.code(204).send();
    },
  );
}
