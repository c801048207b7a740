import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { jsonOrCsv, sendText, wantsCsv } from '../requests/sendText.ts';
import { overview } from '../results/overview/overview.ts';
import { overviewCsv } from '../results/overview/overviewCsv.ts';
import { overviewSummary } from '../results/overview/overviewSummary.ts';
import { pageOf } from '../schemas/common.ts';
import { CoachOverview, OverviewQuery, OverviewSummary, OverviewSummaryQuery } from '../schemas/overview.ts';

const tags = ['results'];

export async function overviewRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/overview',
    {
      schema: {
        tags,
        summary:
          "The coaches with their rooms' verdicts, the most worrying first; by Accept all of them as CSV, a row a room",
        querystring: OverviewQuery,
        response: { 200: jsonOrCsv(pageOf(CoachOverview)) },
      },
      config: { visits: true },
    },
    async (request, reply) => {
      const person = personOf(request);
      if (wantsCsv(reply))
        return sendText(reply, 'text/csv', await overviewCsv(request.db, person, request.query));
      return overview(request.db, person, request.query);
    },
  );

  app.get(
    '/api/v1/overview/summary',
    {
      schema: {
        tags,
        summary: 'All that the caller sees, in numbers, and what changed since a moment',
        querystring: OverviewSummaryQuery,
        response: { 200: OverviewSummary },
      },
      config: { visits: true },
    },
    (request) => overviewSummary(request.db, personOf(request), request.query.since ?? null),
  );
}
