import { z } from 'zod';
import { tokenOf } from '../access/callers/authenticate.ts';
import { findPerson } from '../access/people/people.ts';
import { personOf } from '../access/scopes/caller.ts';
import { refuseForeignPage } from '../access/signIn/sameOrigin.ts';
import { clearSessionCookie } from '../access/signIn/sessionCookie.ts';
import { endSession } from '../access/signIn/sessions.ts';
import { endReplaced, signedIn } from '../access/signIn/signedIn.ts';
import { signIn } from '../access/signIn/signIn.ts';
import type { App } from '../appTypes.ts';
import { limitFailures } from '../limits/limitFailures.ts';
import { NO_CONTENT } from '../schemas/common.ts';
import { Person, SignedIn, SignInBody } from '../schemas/session.ts';

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
      const answer = await failures.counting(request, async () =>
        signedIn(reply, await signIn(app.database, email, password)),
      );
      await endReplaced(request, answer.person.id);
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
    },
  );
}
