import { setUp } from '../access/people/setUp.ts';
import { refuseForeignPage } from '../access/signIn/sameOrigin.ts';
import { signedIn } from '../access/signIn/signedIn.ts';
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
        problems: ['not-found', 'wrong-password'],
        rateLimit: { max: 60, timeWindow: '1 minute' },
      },
    },
    async (request, reply) => {
      refuseForeignPage(request);
      return signedIn(reply, await setUp(app.database, app.setUpToken, request.body));
    },
  );
}
