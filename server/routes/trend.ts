import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { sendText } from '../requests/sendText.ts';
import { trendText } from '../results/trend/trendText.ts';
import { ByIdParams } from '../schemas/common.ts';
import { Trend, TrendQuery } from '../schemas/results.ts';

export async function trendRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/rooms/:id/trend',
    {
      schema: {
        tags: ['results'],
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
}
