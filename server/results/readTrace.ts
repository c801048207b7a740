import type { Kysely } from 'kysely';
import type { RecordedTrace } from '../../ingest/stroke.ts';
import { decodeTrace } from '../../ingest/traceCodec.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scope.ts';
import { notFound } from '../problems.ts';

/** The samples of a stroke as they were sent. */
export async function readTrace(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  strokeId: string,
): Promise<RecordedTrace> {
  const row = await db
    .selectFrom('strokes as s')
    .leftJoin('traces as t', (join) =>
      join
        .onRef('t.account_id', '=', 's.account_id')
        .onRef('t.stroke_id', '=', 's.id')
        .onRef('t.received_at', '=', 's.received_at'),
    )
    .select('t.trace')
    .where('s.account_id', '=', accountId)
    .where('s.id', '=', strokeId)
    .executeTakeFirst();
  if (row === undefined) throw notFound('stroke');
  if (row.trace === null) throw notFound('trace of this stroke any more');
  return decodeTrace(row.trace);
}
