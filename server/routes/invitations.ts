import { acceptInvitation, checkInvitation } from '../access/people/invitations.ts';
import { refuseForeignPage } from '../access/signIn/sameOrigin.ts';
import { signedIn } from '../access/signIn/signedIn.ts';
import type { App } from '../appTypes.ts';
import { limitFailures } from '../limits/limitFailures.ts';
import { AcceptanceBody, InvitationParams } from '../schemas/access.ts';
import { NO_CONTENT } from '../schemas/common.ts';
import { SignedIn } from '../schemas/session.ts';

/** So many invitations that are none may come from one address. */
const FAILURES_PER_MINUTE = 60;

export async function invitationRoutes(app: App): Promise<void> {
  const failures = limitFailures(app, FAILURES_PER_MINUTE);
  app.get(
    '/api/v1/invitations/:invitation',
    {
      schema: {
        tags: ['people'],
        summary: 'Whether an invitation can still be accepted',
        params: InvitationParams,
        response: { 204: NO_CONTENT },
      },
      config: { access: 'public', problems: ['not-found'] },
      onRequest: failures.refuse,
    },
    (request) => failures.counting(request, () => checkInvitation(app.database, request.params.invitation)),
  );

  app.post(
    '/api/v1/invitations/:invitation',
    {
      schema: {
        tags: ['people'],
        summary: 'Accept an invitation: sets the password and signs in, once',
        description:
          'Where the address of a grant has an account by now, the password must be that account’s.',
        params: InvitationParams,
        body: AcceptanceBody,
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
      const { invitation } = request.params;
      return failures.counting(request, async () =>
        signedIn(reply, await acceptInvitation(app.database, invitation, request.body.password)),
      );
    },
  );
}
