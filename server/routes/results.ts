import { MEASURES } from '../../analysis/measures.ts';
import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { sendText } from '../requests/sendText.ts';
import { compareRoom } from '../results/compareRoom.ts';
import { normalOfRoom } from '../results/normalOfRoom.ts';
import { roomStatuses } from '../results/roomStatuses.ts';
import { trendText } from '../results/trend/trendText.ts';
import { ByIdParams } from '../schemas/common.ts';
import {
  Comparison,
  ComparisonQuery,
  MeasuresAnswer,
  RoomStatus,
  Trend,
  TrendQuery,
} from '../schemas/results.ts';
import { Normal, NormalQuery } from '../schemas/travel.ts';
import { findRoom } from '../things/rooms.ts';

const tags = ['results'];

/** What is found of a room from all of its strokes. */
export async function resultRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/measures',
    { schema: { tags, summary: 'The measures that a trend takes', response: { 200: MeasuresAnswer } } },
    async () => MEASURES.map(({ name, unit, title }) => ({ name, unit, title })),
  );

  app.get(
    '/api/v1/rooms/:id/status',
    { schema: { tags, summary: "A room's verdict", params: ByIdParams, response: { 200: RoomStatus } } },
    async (request) => {
      const { accountId, visit } = personOf(request);
      const room = await findRoom(request.db, accountId, request.params.id);
      const [status] = await roomStatuses(request.db, { accountId, byGrant: visit !== undefined }, [room]);
      return status;
    },
  );

  app.get(
    '/api/v1/rooms/:id/trend',
    {
      schema: {
        tags,
        summary: 'One measure of a room over time, against its own normal',
        params: ByIdParams,
        querystring: TrendQuery,
        response: { 200: Trend },
      },
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      const text = await trendText(request.db, request.pool, accountId, request.params.id, request.query);
      return sendText(reply, 'application/json', text);
    },
  );

  app.get(
    '/api/v1/rooms/:id/normal',
    {
      schema: {
        tags,
        summary: 'What is normal along the travel, side by side',
        params: ByIdParams,
        querystring: NormalQuery,
        response: { 200: Normal },
      },
    },
    (request) => normalOfRoom(request.db, personOf(request).accountId, request.params.id, request.query),
  );

  app.get(
    '/api/v1/rooms/:id/comparison',
    {
      schema: {
        tags,
        summary: 'Before against after a repair, or any two spans',
        params: ByIdParams,
        querystring: ComparisonQuery,
        response: { 200: Comparison },
      },
    },
    (request) => compareRoom(request.db, app.comparer, personOf(request), request.params.id, request.query),
  );
}
