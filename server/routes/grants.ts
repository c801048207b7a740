import { DEALER, personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { createOnce } from '../requests/createOnce.ts';
import { Grant, GrantBody, NewGrant } from '../schemas/access.ts';
import { ByIdParams, NO_CONTENT, OfCoachParams, PageQuery, pageOf } from '../schemas/common.ts';
import { createGrant, findGrant, listGrants, removeGrant } from '../things/grants.ts';

const tags = ['grants'];

/** Who else may see a coach, for the dealers of its account. */
export async function grantRoutes(app: App): Promise<void> {
  app.post(
    '/api/v1/coaches/:coachId/grants',
    {
      schema: {
        tags,
        summary: 'Let a person of another account see a coach; an unknown address gets an invitation',
        params: OfCoachParams,
        body: GrantBody,
        response: { 201: NewGrant },
      },
      config: { change: DEALER, byHand: true },
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      const grant = await createOnce(reply, (trx) =>
        createGrant(trx, accountId, request.params.coachId, request.body),
      );
      return reply.header('location', `/api/v1/grants/${grant.id}`).send(grant);
    },
  );

  app.get(
    '/api/v1/coaches/:coachId/grants',
    {
      schema: {
        tags,
        summary: 'List who else may see a coach',
        params: OfCoachParams,
        querystring: PageQuery,
        response: { 200: pageOf(Grant) },
      },
      config: { see: DEALER, byHand: true },
    },
    (request) => {
      const { accountId } = personOf(request);
      return listGrants(request.db, accountId, request.params.coachId, request.query);
    },
  );

  app.get(
    '/api/v1/grants/:id',
    {
      schema: { tags, summary: 'Read a grant', params: ByIdParams, response: { 200: Grant } },
      config: { see: DEALER, byHand: true },
    },
    (request) => findGrant(request.db, personOf(request).accountId, request.params.id),
  );

  app.delete(
    '/api/v1/grants/:id',
    {
      schema: { tags, summary: 'End a grant at once', params: ByIdParams, response: { 204: NO_CONTENT } },
      config: { see: DEALER, byHand: true },
    },
    (request) => removeGrant(request.db, personOf(request).accountId, request.params.id),
  );
}
