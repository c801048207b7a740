import pLimit from 'p-limit';
import { FORMS } from '../../ingest/forms/readForm.ts';
import { callerOf, personOf, STAFF } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { createOnce } from '../requests/createOnce.ts';
import { LARGE_BODY } from '../requests/requestBodies.ts';
import { isCsv, sendForm, takeForms } from '../requests/sentForms.ts';
import { changeStroke, removeStroke } from '../results/changeStroke.ts';
import { sendStrokes } from '../results/sendStrokes.ts';
import { sidesToSendTo } from '../results/sidesToSendTo.ts';
import { strokeStore } from '../results/strokeStore.ts';
import { findStroke, strokeView } from '../results/strokeView.ts';
import { ByIdParams, NO_CONTENT } from '../schemas/common.ts';
import { SentStrokes, SentStrokesQuery } from '../schemas/sentStrokes.ts';
import { Stroke, StrokeOutcomes, StrokePatch } from '../schemas/stroke.ts';

const tags = ['strokes'];

export async function strokeRoutes(app: App): Promise<void> {
  const store = strokeStore(app.database, app.measurer);
  // One that is kept under a key holds a connection while its strokes wait for another: many at once could hold them all.
  const keyed = pLimit(1);

  // In a scope of their own, as no other route takes these forms.
  await app.register(async (scope: App) => {
    takeForms(scope);
    scope.addHook('onRequest', async (request) => {
      // It closes once the body was read, and when the sender is gone.
      if (!request.raw.closed) request.raw.once('close', store.expect());
    });
    scope.post(
      '/api/v1/strokes',
      {
        ...LARGE_BODY,
        schema: {
          tags,
          operationId: 'sendStrokes',
          summary: 'Send strokes: one, or an array of up to 500; or a SenML pack, or a CSV recording',
          consumes: ['application/json', ...FORMS],
          querystring: SentStrokesQuery,
          body: SentStrokes,
          response: { 200: StrokeOutcomes },
        },
        config: { access: 'sender', visits: true, change: STAFF, compressedBody: true, checksOwnText: true },
      },
      async (request, reply) => {
        const send = async (strokes: unknown) => {
          const outcomes = await sendStrokes({ store, pool: request.pool }, callerOf(request), strokes);
          for (const { outcome } of outcomes) app.metrics.strokes.inc({ outcome });
          return outcomes;
        };
        const answer = async () => {
          const { body, query } = request;
          const roomSides = isCsv(body)
            ? await sidesToSendTo(request.db, callerOf(request), query.roomId)
            : undefined;
          return { results: await sendForm(body, { ...query, roomSides }, send) };
        };
        // The strokes' own keys make sending again harmless; the header also brings the first answer again.
        if (request.headers['idempotency-key'] === undefined) return answer();
        return keyed(() => createOnce(reply, answer));
      },
    );
  });

  app.get(
    '/api/v1/strokes/:id',
    { schema: { tags, summary: 'Read a stroke', params: ByIdParams, response: { 200: Stroke } } },
    async (request) =>
      strokeView(await findStroke(request.db, personOf(request).accountId, request.params.id)),
  );

  app.patch(
    '/api/v1/strokes/:id',
    {
      schema: {
        tags,
        summary: 'Correct a stroke, or set it aside',
        params: ByIdParams,
        body: StrokePatch,
        response: { 200: Stroke },
      },
      config: { change: STAFF },
    },
    (request) => changeStroke(request.db, personOf(request).accountId, request.params.id, request.body),
  );

  app.delete(
    '/api/v1/strokes/:id',
    {
      schema: { tags, summary: 'Remove a stroke', params: ByIdParams, response: { 204: NO_CONTENT } },
      config: { change: STAFF },
    },
    (request) => removeStroke(request.db, personOf(request).accountId, request.params.id),
  );
}
