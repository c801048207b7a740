import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { compareRoom } from '../results/compareRoom.ts';
import { ByIdParams } from '../schemas/common.ts';
import { Comparison, ComparisonQuery } from '../schemas/results.ts';

export async function comparisonRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/rooms/:id/comparison',
    {
      schema: {
        tags: ['results'],
        summary: 'Before against after a repair, or any two spans',
        params: ByIdParams,
        querystring: ComparisonQuery,
        response: { 200: Comparison },
      },
    },
    (request) => compareRoom(request.db, personOf(request).accountId, request.params.id, request.query),
  );
}
