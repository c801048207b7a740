import { tokenOf } from '../access/callers/authenticate.ts';
import { changePassword } from '../access/people/changePassword.ts';
import { personOf } from '../access/scopes/caller.ts';
import { clearSessionCookie } from '../access/signIn/sessionCookie.ts';
import { endSessionById, endSessions, listSessions } from '../access/signIn/sessions.ts';
import type { App } from '../appTypes.ts';
import { PasswordBody, SessionPlace } from '../schemas/access.ts';
import { ByIdParams, NO_CONTENT, PageQuery, pageOf } from '../schemas/common.ts';

const tags = ['session'];

/** The caller's own sessions and password. */
export async function sessionsRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/sessions',
    {
      schema: {
        tags,
        summary: 'Where the caller is signed in, the latest first',
        querystring: PageQuery,
        response: { 200: pageOf(SessionPlace) },
      },
      config: { byHand: true },
    },
    (request) => listSessions(request.db, personOf(request), tokenOf(request), request.query),
  );

  app.delete(
    '/api/v1/sessions',
    {
      schema: { tags, summary: 'Sign out everywhere', response: { 204: NO_CONTENT } },
      config: { byHand: true },
    },
    async (request, reply) => {
      await endSessions(request.db, personOf(request));
      clearSessionCookie(request, reply);
    },
  );

  app.delete(
    '/api/v1/sessions/:id',
    {
      schema: { tags, summary: 'Sign out in one place', params: ByIdParams, response: { 204: NO_CONTENT } },
      config: { byHand: true },
    },
    (request) => endSessionById(request.db, personOf(request), request.params.id),
  );

  app.put(
    '/api/v1/password',
    {
      schema: {
        tags,
        summary: 'Change the own password; other sessions end',
        body: PasswordBody,
        response: { 204: NO_CONTENT },
      },
      config: { byHand: true, problems: ['wrong-password', 'too-many-attempts'] },
    },
    (request) => changePassword(app.database, personOf(request), tokenOf(request), request.body),
  );
}
