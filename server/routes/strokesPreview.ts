import type { Readable } from 'node:stream';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { personOf, STAFF } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { LARGE_BODY } from '../requests/requestBodies.ts';
import { previewStrokes } from '../results/previewStrokes.ts';
import { ByIdParams } from '../schemas/common.ts';
import { StrokesPreview } from '../schemas/preview.ts';
import { SentStrokesQuery } from '../schemas/sentStrokes.ts';

/** What the query of `POST /api/v1/strokes` says of a CSV, less what the address says. */
const PreviewQuery = SentStrokesQuery.omit({ roomId: true, key: true });
const CsvBody = z.instanceof(Buffer, { error: 'The body must be CSV.' }).meta({ type: 'string' });

export async function strokesPreviewRoutes(app: App): Promise<void> {
  // In a scope of its own, as it takes nothing but CSV.
  await app.register(async (scope: App) => {
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser('text/csv', (request: FastifyRequest, payload: Readable) =>
      app.readBody(request, payload),
    );
    scope.post(
      '/api/v1/rooms/:id/strokes/preview',
      {
        ...LARGE_BODY,
        schema: {
          tags: ['strokes'],
          summary:
            'What would be made of a CSV recording: its columns, its strokes, its faults; nothing is stored',
          consumes: ['text/csv'],
          params: ByIdParams,
          querystring: PreviewQuery,
          body: CsvBody,
          response: { 200: StrokesPreview },
        },
        config: { change: STAFF, compressedBody: true, checksOwnText: true },
      },
      (request) =>
        previewStrokes(
          request.db,
          personOf(request).accountId,
          request.params.id,
          request.body,
          request.query,
        ),
    );
  });
}
