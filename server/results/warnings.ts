import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import type { Warning } from '../schemas/results.ts';
import { cutPage, readCursor, TimePlace } from './keysetCursor.ts';
import { type WarningRow, warningView } from './warningView.ts';

export interface WarningsQuestion {
  readonly limit: number;
  readonly cursor?: string;
  readonly state: 'open' | 'acknowledged' | 'cleared' | 'all';
}

/** The warnings of one room, or of all that the account has, newest first. */
export async function listWarnings(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string | null,
  { limit, cursor, state }: WarningsQuestion,
): Promise<{ items: Warning[]; next: string | null }> {
  let query = selectWarnings(db, accountId);
  if (roomId !== null) query = query.where('w.room_id', '=', roomId);
  if (state === 'cleared') query = query.where('w.cleared_at', 'is not', null);
  else if (state !== 'all') {
    query = query
      .where('w.cleared_at', 'is', null)
      .where('w.acknowledged_at', state === 'open' ? 'is' : 'is not', null);
  }
  if (cursor) {
    const [at, id] = readCursor(cursor, TimePlace);
    query = query.where(sql<boolean>`(w.opened_at, w.id) < (${at}::timestamptz, ${id}::uuid)`);
  }
  const rows = await query
    .orderBy('w.opened_at', 'desc')
    .orderBy('w.id', 'desc')
    .limit(limit + 1)
    .execute();
  return cutPage(rows, limit, (row) => [row.opened_at.toISOString(), row.id], warningView);
}

export function findWarning(
  db: Kysely<Tables>,
  accountId: string,
  warningId: string,
): Promise<WarningRow | undefined> {
  return selectWarnings(db, accountId).where('w.id', '=', warningId).executeTakeFirst();
}

function selectWarnings(db: Kysely<Tables>, accountId: string) {
  return db
    .selectFrom('warnings as w')
    .leftJoin('people as p', (join) =>
      join.onRef('p.account_id', '=', 'w.account_id').onRef('p.id', '=', 'w.acknowledged_by'),
    )
    .selectAll('w')
    .select('p.name as acknowledged_by_name')
    .where('w.account_id', '=', accountId);
}
