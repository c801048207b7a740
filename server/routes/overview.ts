import { personOf } from '../access/caller.ts';
import { withVisits } from '../access/scope.ts';
import type { App } from '../appTypes.ts';
import { overview } from '../results/overview.ts';
import { PageQuery, pageOf } from '../schemas/common.ts';
import { CoachOverview } from '../schemas/results.ts';

export async function overviewRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/overview',
    {
      schema: {
        tags: ['results'],
        summary: "The coaches with their rooms' verdicts, the most worrying first",
        querystring: PageQuery,
        response: { 200: pageOf(CoachOverview) },
      },
    },
    async (request) => overview(app.db, await withVisits(app.db, personOf(request)), request.query),
  );
}
