import { personOf, STAFF } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { createOnce } from '../requests/createOnce.ts';
import { ByIdParams, NO_CONTENT, OfCoachParams, PageQuery, pageOf } from '../schemas/common.ts';
import { Logger, LoggerBody, LoggerPatch, LoggerWithToken } from '../schemas/logger.ts';
import { findCoach } from '../things/coaches.ts';
import { changeLogger, createLogger, findLogger, listLoggers, removeLogger } from '../things/loggers.ts';

const tags = ['loggers'];

export async function loggerRoutes(app: App): Promise<void> {
  app.post(
    '/api/v1/coaches/:coachId/loggers',
    {
      schema: {
        tags,
        summary: 'Add a logger to a coach; its token is answered this once',
        params: OfCoachParams,
        body: LoggerBody,
        response: { 201: LoggerWithToken },
      },
      config: { change: STAFF },
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      const logger = await createOnce(reply, (trx) =>
        createLogger(trx, accountId, request.params.coachId, request.body),
      );
      return reply.header('location', `/api/v1/loggers/${logger.id}`).send(logger);
    },
  );

  app.get(
    '/api/v1/coaches/:coachId/loggers',
    {
      schema: {
        tags,
        summary: "List a coach's loggers",
        params: OfCoachParams,
        querystring: PageQuery,
        response: { 200: pageOf(Logger) },
      },
    },
    async (request) => {
      const { accountId } = personOf(request);
      const coach = await findCoach(request.db, accountId, request.params.coachId);
      return listLoggers(request.db, accountId, coach.id, request.query);
    },
  );

  app.get(
    '/api/v1/loggers/:id',
    { schema: { tags, summary: 'Read a logger', params: ByIdParams, response: { 200: Logger } } },
    (request) => findLogger(request.db, personOf(request).accountId, request.params.id),
  );

  app.patch(
    '/api/v1/loggers/:id',
    {
      schema: {
        tags,
        summary: 'Change a logger',
        params: ByIdParams,
        body: LoggerPatch,
        response: { 200: Logger },
      },
      config: { change: STAFF },
    },
    (request) => changeLogger(request.db, personOf(request).accountId, request.params.id, request.body),
  );

  app.delete(
    '/api/v1/loggers/:id',
    {
      schema: {
        tags,
        summary: 'Remove a logger; its token is worth nothing from then on',
        params: ByIdParams,
        response: { 204: NO_CONTENT },
      },
      config: { change: STAFF },
    },
    (request) => removeLogger(request.db, personOf(request).accountId, request.params.id),
  );
}
