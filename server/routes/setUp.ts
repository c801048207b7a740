import { refuseForeignPage } from '../access/sameOrigin.ts';
import { setSessionCookie } from '../access/sessionCookie.ts';
import { beginSession } from '../access/sessions.ts';
import { setUp } from '../access/setUp.ts';
import type { App } from '../appTypes.ts';
import { SetUpBody, SignedIn } from '../schemas/session.ts';

export async function setUpRoutes(app: App): Promise<void> {
  app.post(
    '/api/v1/set-up',
    {
      schema: {
        tags: ['session'],
        operationId: 'setUp',
        summary: 'Make the first account by the link that the service printed',
        body: SetUpBody,
        response: { 201: SignedIn },
      },
      config: {
        access: 'public',
        problems: ['not-found'],
        rateLimit: { max: 60, timeWindow: '1 minute' },
      },
    },
    async (request, reply) => {
      refuseForeignPage(request);
      const person = await setUp(app.database, app.setUpToken, request.body);
      const session = await beginSession(app.database, person);
      setSessionCookie(request, reply, session);
      return reply.code(201).send({ person, token: session.token });
    },
  );
}
