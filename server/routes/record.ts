import { listRecord, recordCsv } from '../access/own/record.ts';
import { DEALER, personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { jsonOrCsv, sendText, wantsCsv } from '../requests/sendText.ts';
import { pageOf } from '../schemas/common.ts';
import { RecordedAct, RecordQuery } from '../schemas/record.ts';

/** Who did what in the account, for its dealers. */
export async function recordRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/record',
    {
      schema: {
        tags: ['people'],
        summary: 'Who did what, newest first; by Accept the whole span as CSV',
        querystring: RecordQuery,
        response: { 200: jsonOrCsv(pageOf(RecordedAct)) },
      },
      config: { see: DEALER, problems: ['not-found'] },
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      if (wantsCsv(reply))
        return sendText(reply, 'text/csv', await recordCsv(request.db, accountId, request.query));
      return listRecord(request.db, accountId, request.query);
    },
  );
}
