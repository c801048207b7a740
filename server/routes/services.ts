import { z } from 'zod';
import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { createOnce } from '../requests/createOnce.ts';
import { ByIdParams, Id, NO_CONTENT, PageQuery, pageOf } from '../schemas/common.ts';
import { ServiceBody, ServicePatch, ServiceSeen } from '../schemas/service.ts';
import { findRoom } from '../things/rooms.ts';
import {
  changeService,
  createService,
  findService,
  listServices,
  removeService,
} from '../things/services.ts';

const tags = ['services'];
const OfRoomParams = z.object({ roomId: Id });

export async function serviceRoutes(app: App): Promise<void> {
  app.post(
    '/api/v1/rooms/:roomId/services',
    {
      schema: {
        tags,
        summary: 'Record work done on a room',
        params: OfRoomParams,
        body: ServiceBody,
        response: { 201: ServiceSeen },
      },
    },
    async (request, reply) => {
      const caller = personOf(request);
      const service = await createOnce(reply, (trx) =>
        createService(trx, caller, request.params.roomId, request.body),
      );
      return reply.header('location', `/api/v1/services/${service.id}`).send(service);
    },
  );

  app.get(
    '/api/v1/rooms/:roomId/services',
    {
      schema: {
        tags,
        summary: 'List the work done on a room, newest first',
        params: OfRoomParams,
        querystring: PageQuery,
        response: { 200: pageOf(ServiceSeen) },
      },
    },
    async (request) => {
      const caller = personOf(request);
      const room = await findRoom(request.db, caller.accountId, request.params.roomId);
      return listServices(request.db, caller, room.id, request.query);
    },
  );

  app.get(
    '/api/v1/services/:id',
    { schema: { tags, summary: 'Read a service', params: ByIdParams, response: { 200: ServiceSeen } } },
    (request) => findService(request.db, personOf(request), request.params.id),
  );

  app.patch(
    '/api/v1/services/:id',
    {
      schema: {
        tags,
        summary: 'Change a service; an owner only its own',
        params: ByIdParams,
        body: ServicePatch,
        response: { 200: ServiceSeen },
      },
      config: { problems: ['not-allowed'] },
    },
    (request) => {
      const caller = personOf(request);
      return inTransaction(request.db, (trx) => changeService(trx, caller, request.params.id, request.body));
    },
  );

  app.delete(
    '/api/v1/services/:id',
    {
      schema: {
        tags,
        summary: 'Remove a service; an owner only its own',
        params: ByIdParams,
        response: { 204: NO_CONTENT },
      },
      config: { problems: ['not-allowed'] },
    },
    (request) => {
      const caller = personOf(request);
      return inTransaction(request.db, (trx) => removeService(trx, caller, request.params.id));
    },
  );
}
