import { DEALER, personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { Account, AccountPatch, RetentionRun } from '../schemas/account.ts';
import { PageQuery, pageOf } from '../schemas/common.ts';
import { changeAccount, findAccount, listRetentionRuns } from '../things/account.ts';

const tags = ['account'];
const config = { see: DEALER, problems: ['not-found'] } as const;

/** The caller's own account, for its dealers. */
export async function accountRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/account',
    { schema: { tags, summary: 'Read the account', response: { 200: Account } }, config },
    (request) => findAccount(request.db, personOf(request).accountId),
  );

  app.patch(
    '/api/v1/account',
    {
      schema: {
        tags,
        summary: 'Say how long the samples of strokes are kept',
        body: AccountPatch,
        response: { 200: Account },
      },
      config,
    },
    (request) => changeAccount(request.db, personOf(request).accountId, request.body),
  );

  app.get(
    '/api/v1/account/retention-runs',
    {
      schema: {
        tags,
        summary: 'What was removed by that setting, the latest first',
        querystring: PageQuery,
        response: { 200: pageOf(RetentionRun) },
      },
      config,
    },
    (request) => listRetentionRuns(request.db, personOf(request).accountId, request.query),
  );
}
