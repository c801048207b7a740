import { type Kysely, sql } from 'kysely';
import type { Direction } from '../../analysis/trace.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scope.ts';
import { answerPage, oneMoreThan, pageFrom, readCursor, TimePlace } from '../paging.ts';
import type { Stroke } from '../schemas/stroke.ts';
import { findRoom } from '../things/rooms.ts';
import { strokeView } from './strokeView.ts';

export interface StrokesQuestion {
  readonly limit: number;
  readonly cursor?: string;
  readonly direction?: Direction;
  readonly from?: string;
  readonly to?: string;
}

/** The room's strokes, newest first. A direction also finds the strokes whose current told it. */
export async function strokesOfRoom(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  { limit, cursor, direction, from, to }: StrokesQuestion,
): Promise<{ items: Stroke[]; next: string | null }> {
  await findRoom(db, accountId, roomId);
  let query = db
    .selectFrom('strokes')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId);
  if (direction) query = query.where(sql`coalesce(direction, analysis ->> 'direction')`, '=', direction);
  if (from) query = query.where('placed_at', '>=', new Date(from));
  if (to) query = query.where('placed_at', '<=', new Date(to));
  const list = `strokes/${roomId}`;
  const after = readCursor(list, cursor, TimePlace);
  if (after !== null) {
    const [at, id] = after;
    query = query.where(sql<boolean>`(placed_at, id) < (${at}::timestamptz, ${id}::uuid)`);
  }
  const rows = await query
    .orderBy('placed_at', 'desc')
    .orderBy('id', 'desc')
    .limit(oneMoreThan(limit))
    .execute();
  return answerPage(list, pageFrom(rows, limit), strokeView, (row) => [row.placed_at.toISOString(), row.id]);
}
