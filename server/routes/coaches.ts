import { z } from 'zod';
import { personOf, STAFF } from '../access/caller.ts';
import type { App } from '../appTypes.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { Coach, CoachBody, CoachPatch } from '../schemas/coach.ts';
import { ByIdParams, Id, PageQuery, pageOf } from '../schemas/common.ts';
import { changeCoach, coachOf, createCoach, findCoach, listCoaches, removeCoach } from '../things/coaches.ts';
import { NO_CONTENT } from './answers.ts';
import { createOnce } from './createOnce.ts';
import { answerPage, readCursor } from './paging.ts';

const tags = ['coaches'];
const LIST = 'coaches';

export async function coachRoutes(app: App): Promise<void> {
  app.post(
    '/api/v1/coaches',
    {
      schema: { tags, summary: 'Add a coach', body: CoachBody, response: { 201: Coach } },
      config: { change: STAFF },
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      const coach = await createOnce(request.db, request, (trx) => createCoach(trx, accountId, request.body));
      return reply.code(201).header('location', `/api/v1/coaches/${coach.id}`).send(coach);
    },
  );

  app.get(
    '/api/v1/coaches',
    {
      schema: {
        tags,
        summary: 'List the coaches that the caller may see',
        querystring: PageQuery,
        response: { 200: pageOf(Coach) },
      },
      config: { visits: true },
    },
    async (request) => {
      const { limit, cursor } = request.query;
      const afterId = readCursor(LIST, cursor, z.tuple([Id]))?.[0] ?? null;
      const person = personOf(request);
      const page = await listCoaches(request.db, person, { limit, afterId });
      return answerPage(LIST, page, coachOf, (row) => [row.id]);
    },
  );

  app.get(
    '/api/v1/coaches/:id',
    { schema: { tags, summary: 'Read a coach', params: ByIdParams, response: { 200: Coach } } },
    async (request) => findCoach(request.db, personOf(request).accountId, request.params.id),
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
    async (request) => changeCoach(request.db, personOf(request).accountId, request.params.id, request.body),
  );

  app.delete(
    '/api/v1/coaches/:id',
    {
      schema: { tags, summary: 'Remove a coach', params: ByIdParams, response: { 204: NO_CONTENT } },
      config: { change: STAFF },
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      await inTransaction(request.db, (trx) => removeCoach(trx, accountId, request.params.id));
      return reply.code(204).send();
    },
  );
}
