import { checkReset, mailPasswordReset, resetPassword } from '../access/people/passwordReset.ts';
import { refuseForeignPage } from '../access/signIn/sameOrigin.ts';
import { signedIn } from '../access/signIn/signedIn.ts';
import type { App } from '../appTypes.ts';
import { limitFailures } from '../limits/limitFailures.ts';
import { ResetBody, ResetParams, ResetRequestBody, ResetRequested } from '../schemas/access.ts';
import { NO_CONTENT } from '../schemas/common.ts';
import { SignedIn } from '../schemas/session.ts';

const tags = ['session'];
const FROM_ONE_ADDRESS = { max: 30, timeWindow: '1 minute' } as const;

/** For whoever forgot its password. */
export async function passwordResetRoutes(app: App): Promise<void> {
  const failures = limitFailures(app, FROM_ONE_ADDRESS.max);
  app.post(
    '/api/v1/password-resets',
    {
      schema: {
        tags,
        summary: 'Ask for a link that sets the password anew',
        description:
          'Answers alike whether the address is known here or not. `mails` says whether this installation has a mail ' +
          'server; without one the link is printed where the service runs.',
        body: ResetRequestBody,
        response: { 202: ResetRequested },
      },
      config: { access: 'public', rateLimit: FROM_ONE_ADDRESS },
    },
    async (request) => {
      refuseForeignPage(request);
      const { email } = request.body;
      // Not waited for: neither the look-up nor the mail server may show in the time that the answer takes.
      setImmediate(() => {
        mailPasswordReset(app.database, app.mailer, email, app.publicUrl).catch((error: unknown) =>
          request.log.error({ err: error }, 'a link for a new password was not sent'),
        );
      });
      return { status: 'accepted', mails: app.mailer.reachesMailboxes } as const;
    },
  );

  app.get(
    '/api/v1/password-resets/:reset',
    {
      schema: {
        tags,
        summary: 'Whether such a link can still be used',
        params: ResetParams,
        response: { 204: NO_CONTENT },
      },
      config: { access: 'public', problems: ['not-found'] },
      onRequest: failures.refuse,
    },
    (request) => failures.counting(request, () => checkReset(app.database, request.params.reset)),
  );

  app.post(
    '/api/v1/password-resets/:reset',
    {
      schema: {
        tags,
        summary: 'Set the password by such a link, once; every session ends, and a new one begins',
        params: ResetParams,
        body: ResetBody,
        response: { 200: SignedIn },
      },
      config: { access: 'public', problems: ['wrong-password'] },
      onRequest: failures.refuse,
    },
    async (request, reply) => {
      refuseForeignPage(request);
      return failures.counting(request, async () =>
        signedIn(reply, await resetPassword(app.database, request.params.reset, request.body.password)),
      );
    },
  );
}
