import type { Kysely } from 'kysely';
import type { RecordedTrace } from '../../../ingest/stroke.ts';
import { decodeTrace } from '../../../ingest/traceCodec.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { AccountInScope } from '../../access/scopes/scope.ts';
import { notFound, ProblemError } from '../../problems.ts';

/** The samples of a stroke as they were sent. */
export async function readTrace(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  strokeId: string,
): Promise<RecordedTrace> {
  const row = await strokesAndTraces(db)
    .select(['t.trace', 's.received_at'])
    .where('s.account_id', '=', accountId)
    .where('s.id', '=', strokeId)
    .executeTakeFirstOrThrow(() => notFound('stroke'));
  if (row.trace === null) throw await removed(db, accountId, row.received_at);
  return decodeTrace(row.trace);
}

/** Strokes as `s`, each with its trace as `t`, or without one where that was removed. */
export function strokesAndTraces(db: Kysely<Tables>) {
  return db
    .selectFrom('strokes as s')
    .leftJoin('traces as t', (join) =>
      join
        .onRef('t.account_id', '=', 's.account_id')
        .onRef('t.stroke_id', '=', 's.id')
        .onRef('t.received_at', '=', 's.received_at'),
    );
}

/** By the first run of the account's setting that reached as far as this stroke. */
async function removed(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  receivedAt: Date,
): Promise<ProblemError> {
  const run = await db
    .selectFrom('retention_runs')
    .select('ran_at')
    .where('account_id', '=', accountId)
    .where('removed_before', '>', receivedAt)
    .orderBy('ran_at')
    .limit(1)
    .executeTakeFirst();
  const when = run === undefined ? '' : ` on ${run.ran_at.toISOString().slice(0, 10)}`;
  return new ProblemError('samples-removed', `The samples were removed${when} by the account's setting.`);
}
