import { personOf, STAFF } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { createOnce } from '../requests/createOnce.ts';
import { ByIdParams, NO_CONTENT, OfCoachParams, PageQuery, pageOf } from '../schemas/common.ts';
import { Room, RoomBody, RoomPatch } from '../schemas/room.ts';
import { findCoach } from '../things/coaches.ts';
import { changeRoom, createRoom, findRoom, listRooms, removeRoom, roomOf } from '../things/rooms.ts';

const tags = ['rooms'];

export async function roomRoutes(app: App): Promise<void> {
  app.post(
    '/api/v1/coaches/:coachId/rooms',
    {
      schema: {
        tags,
        summary: 'Add a room to a coach',
        params: OfCoachParams,
        body: RoomBody,
        response: { 201: Room },
      },
      config: { change: STAFF },
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      const room = await createOnce(reply, (trx) =>
        createRoom(trx, accountId, request.params.coachId, request.body),
      );
      return reply.header('location', `/api/v1/rooms/${room.id}`).send(room);
    },
  );

  app.get(
    '/api/v1/coaches/:coachId/rooms',
    {
      schema: {
        tags,
        summary: "List a coach's rooms",
        params: OfCoachParams,
        querystring: PageQuery,
        response: { 200: pageOf(Room) },
      },
    },
    async (request) => {
      const { accountId } = personOf(request);
      const coach = await findCoach(request.db, accountId, request.params.coachId);
      return listRooms(request.db, accountId, coach.id, request.query);
    },
  );

  app.get(
    '/api/v1/rooms/:id',
    { schema: { tags, summary: 'Read a room', params: ByIdParams, response: { 200: Room } } },
    async (request) => roomOf(await findRoom(request.db, personOf(request).accountId, request.params.id)),
  );

  app.patch(
    '/api/v1/rooms/:id',
    {
      schema: {
        tags,
        summary: 'Change a room; its results are made anew where they depend on it',
        description: 'A side that strokes of the room name cannot be taken away: 409.',
        params: ByIdParams,
        body: RoomPatch,
        response: { 200: Room },
      },
      config: { change: STAFF },
    },
    (request) => {
      const { accountId } = personOf(request);
      return inTransaction(request.db, (trx) => changeRoom(trx, accountId, request.params.id, request.body));
    },
  );

  app.delete(
    '/api/v1/rooms/:id',
    {
      schema: { tags, summary: 'Remove a room', params: ByIdParams, response: { 204: NO_CONTENT } },
      config: { change: STAFF },
    },
    (request) => {
      const { accountId } = personOf(request);
      return inTransaction(request.db, (trx) => removeRoom(trx, accountId, request.params.id));
    },
  );
}
