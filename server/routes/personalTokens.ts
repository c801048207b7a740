import { tokenOf } from '../access/callers/authenticate.ts';
import {
  createPersonalToken,
  endPersonalToken,
  listPersonalTokens,
} from '../access/callers/personalTokens.ts';
import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { createOnce } from '../requests/createOnce.ts';
import { ByIdParams, NO_CONTENT, PageQuery, pageOf } from '../schemas/common.ts';
import { NewPersonalToken, PersonalToken, PersonalTokenBody } from '../schemas/personalToken.ts';

const tags = ['session'];

/** The caller's own tokens for scripts. */
export async function personalTokenRoutes(app: App): Promise<void> {
  app.post(
    '/api/v1/tokens',
    {
      schema: {
        tags,
        summary: 'Make a token for a script of one’s own; it is answered once',
        body: PersonalTokenBody,
        response: { 201: NewPersonalToken },
      },
      config: { byHand: true },
    },
    (request, reply) => {
      return createOnce(reply, (trx) =>
        createPersonalToken(trx, personOf(request), tokenOf(request), request.body),
      );
    },
  );

  app.get(
    '/api/v1/tokens',
    {
      schema: {
        tags,
        summary: 'The caller’s tokens that have not run out, the latest first',
        querystring: PageQuery,
        response: { 200: pageOf(PersonalToken) },
      },
      config: { byHand: true },
    },
    (request) => listPersonalTokens(request.db, personOf(request), request.query),
  );

  app.delete(
    '/api/v1/tokens/:id',
    {
      schema: { tags, summary: 'End a token', params: ByIdParams, response: { 204: NO_CONTENT } },
      config: { byHand: true },
    },
    (request) => endPersonalToken(request.db, personOf(request), request.params.id),
  );
}
