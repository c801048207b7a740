import { personOf } from '../access/caller.ts';
import type { App } from '../appTypes.ts';
import { preferredType } from '../results/preferredType.ts';
import { readTrace } from '../results/readTrace.ts';
import { strokesOfRoom } from '../results/strokesOfRoom.ts';
import { traceAsCsv, traceAsJson } from '../results/traceText.ts';
import { ByIdParams, pageOf } from '../schemas/common.ts';
import { Stroke, StrokesQuery, Trace } from '../schemas/stroke.ts';
import { sendText } from './sendText.ts';

const tags = ['strokes'];

export async function strokeResultRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/strokes/:id/trace',
    {
      schema: {
        tags,
        summary: 'The very numbers that were sent, as JSON or, by Accept, as CSV',
        params: ByIdParams,
        response: { 200: Trace },
      },
    },
    async (request, reply) => {
      const trace = await readTrace(app.db, personOf(request).accountId, request.params.id);
      const type = preferredType(request.headers.accept, ['application/json', 'text/csv']);
      reply.header('vary', 'accept');
      if (type === 'text/csv') return sendText(reply, type, traceAsCsv(trace));
      return sendText(reply, 'application/json', traceAsJson(trace));
    },
  );

  app.get(
    '/api/v1/rooms/:id/strokes',
    {
      schema: {
        tags,
        summary: "A room's strokes, newest first",
        params: ByIdParams,
        querystring: StrokesQuery,
        response: { 200: pageOf(Stroke) },
      },
    },
    (request) => strokesOfRoom(app.db, personOf(request).accountId, request.params.id, request.query),
  );
}
