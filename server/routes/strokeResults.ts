import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { PatientTurns } from '../limits/patientTurns.ts';
import { jsonOrCsv, sendText, wantsCsv } from '../requests/sendText.ts';
import { strokesOfRoom } from '../results/strokesOfRoom.ts';
import { joinInTurns } from '../results/trace/joinInTurns.ts';
import { readInTurn } from '../results/trace/readInTurn.ts';
import { readTrace } from '../results/trace/readTrace.ts';
import { isThinner, thinTrace } from '../results/trace/thinTrace.ts';
import { csvOfTrace, jsonOfTrace } from '../results/trace/traceText.ts';
import { travelOfStroke } from '../results/trace/travelOfStroke.ts';
import { ByIdParams, pageOf } from '../schemas/common.ts';
import { Stroke, StrokesQuery, Trace } from '../schemas/stroke.ts';
import { PointsQuery, TravelTrace } from '../schemas/travel.ts';

const tags = ['strokes'];
const POINTS = 4000;
/** A stroke may have more than a million samples; others' requests have turns between two of those. */
const READ_AT_ONCE = 2;
/** A long one that is answered whole waits twice, and for its answer's memory in between. */
const MOST_WAIT_MS = 10_000;

export async function strokeResultRoutes(app: App): Promise<void> {
  const reading = new PatientTurns(READ_AT_ONCE, MOST_WAIT_MS);
  app.get(
    '/api/v1/strokes/:id/trace',
    {
      schema: {
        tags,
        summary: 'The very numbers that were sent, as JSON or, by Accept, as CSV',
        params: ByIdParams,
        querystring: PointsQuery,
        response: { 200: jsonOrCsv(Trace) },
      },
      config: { problems: ['samples-removed'] },
    },
    async (request, reply) => {
      const { points } = request.query;
      const { accountId } = personOf(request);
      const read = () => reading.run(() => readTrace(request.db, accountId, request.params.id));
      const sent = await (points === undefined
        ? readInTurn(read, (bytes) => request.holdAnswer(reply, bytes))
        : read());
      const trace = points === undefined ? sent : thinTrace(sent, points);
      if (wantsCsv(reply)) return sendText(reply, 'text/csv', await joinInTurns(csvOfTrace(trace)));
      const pieces = jsonOfTrace(trace, isThinner(trace, sent));
      return sendText(reply, 'application/json', await joinInTurns(pieces));
    },
  );

  app.get(
    '/api/v1/strokes/:id/travel',
    {
      schema: {
        tags,
        summary: 'The current by where the room was, thinned for a picture (4000 points a side unless said)',
        params: ByIdParams,
        querystring: PointsQuery,
        response: { 200: TravelTrace },
      },
    },
    (request) => {
      const { accountId } = personOf(request);
      const { points = POINTS } = request.query;
      return reading.run(() => travelOfStroke(request.db, accountId, request.params.id, points));
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
    (request) => strokesOfRoom(request.db, personOf(request).accountId, request.params.id, request.query),
  );
}
