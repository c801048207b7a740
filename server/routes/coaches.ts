import { DEALER, personOf, STAFF } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { createOnce } from '../requests/createOnce.ts';
import { Coach, CoachBody, CoachesQuery, CoachPatch } from '../schemas/coach.ts';
import { ByIdParams, NO_CONTENT, pageOf } from '../schemas/common.ts';
import {
  changeCoach,
  createCoach,
  deleteCoach,
  findCoach,
  listCoaches,
  listDeletedCoaches,
  restoreCoach,
} from '../things/coaches.ts';

const tags = ['coaches'];

export async function coachRoutes(app: App): Promise<void> {
  app.post(
    '/api/v1/coaches',
    {
      schema: { tags, summary: 'Add a coach', body: CoachBody, response: { 201: Coach } },
      config: { change: STAFF },
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      const coach = await createOnce(reply, (trx) => createCoach(trx, accountId, request.body));
      return reply.header('location', `/api/v1/coaches/${coach.id}`).send(coach);
    },
  );

  app.get(
    '/api/v1/coaches',
    {
      schema: {
        tags,
        summary: 'List the coaches that the caller may see',
        querystring: CoachesQuery,
        response: { 200: pageOf(Coach) },
      },
      config: { visits: true },
    },
    (request) => {
      const { state, ...asked } = request.query;
      const list = state === 'deleted' ? listDeletedCoaches : listCoaches;
      return list(request.db, personOf(request), asked);
    },
  );

  app.get(
    '/api/v1/coaches/:id',
    { schema: { tags, summary: 'Read a coach', params: ByIdParams, response: { 200: Coach } } },
    (request) => findCoach(request.db, personOf(request).accountId, request.params.id),
  );

  app.patch(
    '/api/v1/coaches/:id',
    {
      schema: {
        tags,
        summary: 'Change a coach',
        params: ByIdParams,
        body: CoachPatch,
        response: { 200: Coach },
      },
      config: { change: STAFF },
    },
    (request) => {
      const { accountId } = personOf(request);
      return inTransaction(request.db, (trx) => changeCoach(trx, accountId, request.params.id, request.body));
    },
  );

  app.delete(
    '/api/v1/coaches/:id',
    {
      schema: {
        tags,
        summary: 'Delete a coach; a dealer can restore it for 30 days',
        params: ByIdParams,
        response: { 204: NO_CONTENT },
      },
      config: { change: STAFF },
    },
    (request) => {
      const { accountId } = personOf(request);
      return inTransaction(request.db, (trx) => deleteCoach(trx, accountId, request.params.id));
    },
  );

  app.post(
    '/api/v1/coaches/:id/restoration',
    {
      schema: {
        tags,
        summary: 'Restore a coach that was deleted, with all that belongs to it',
        params: ByIdParams,
        response: { 200: Coach },
      },
      config: { see: DEALER, ofDeleted: true },
    },
    (request) => {
      const { accountId } = personOf(request);
      return inTransaction(request.db, (trx) => restoreCoach(trx, accountId, request.params.id));
    },
  );
}
