import type { Kysely, Selectable } from 'kysely';
import type { RetentionRunTable } from '../../migrations/strokeTables.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { type PageAsked, pageById } from '../paging.ts';
import { notFound } from '../problems.ts';
import type { Account, AccountPatch, RetentionRun } from '../schemas/account.ts';

export async function findAccount(db: Kysely<Tables>, accountId: AccountInScope): Promise<Account> {
  return db
    .selectFrom('accounts')
    .select(['id', 'name', 'trace_months as traceMonths'])
    .where('id', '=', accountId)
    .executeTakeFirstOrThrow(() => notFound('account'));
}

export async function changeAccount(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  { traceMonths }: AccountPatch,
): Promise<Account> {
  if (traceMonths !== undefined) {
    await db.updateTable('accounts').set({ trace_months: traceMonths }).where('id', '=', accountId).execute();
  }
  return findAccount(db, accountId);
}

/** The latest first. */
export function listRetentionRuns(db: Kysely<Tables>, accountId: AccountInScope, asked: PageAsked) {
  const query = db.selectFrom('retention_runs').selectAll().where('account_id', '=', accountId);
  return pageById(query, { list: 'retention-runs', ...asked }, retentionRunOf, 'latest-first');
}

function retentionRunOf(row: Selectable<RetentionRunTable>): RetentionRun {
  return {
    id: row.id,
    ranAt: row.ran_at.toISOString(),
    traceMonths: row.trace_months,
    removedBefore: row.removed_before.toISOString(),
    tracesBefore: Number(row.traces_before),
    tracesRemoved: Number(row.traces_removed),
    bytesRemoved: Number(row.bytes_removed),
    tracesAfter: Number(row.traces_after),
  };
}
