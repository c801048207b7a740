import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { type AnsweredPage, pageByTime } from '../paging.ts';
import type { Stroke, StrokesQuery } from '../schemas/stroke.ts';
import { findRoom } from '../things/rooms.ts';
import { strokeView } from './strokeView.ts';

/** The room's strokes, newest first. A direction also finds the strokes whose current told it. */
export async function strokesOfRoom(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  { limit, cursor, direction, from, to, profiles }: StrokesQuery,
): Promise<AnsweredPage<Stroke>> {
  await findRoom(db, accountId, roomId);
  let query = db
    .selectFrom('strokes')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId);
  if (direction) query = query.where(sql`coalesce(direction, analysis ->> 'direction')`, '=', direction);
  if (from) query = query.where('placed_at', '>=', new Date(from));
  if (to) query = query.where('placed_at', '<=', new Date(to));
  return pageByTime(query, 'placed_at', { list: `strokes/${roomId}`, limit, cursor }, (row) =>
    profiles === 'false' ? withoutProfiles(strokeView(row)) : strokeView(row),
  );
}

function withoutProfiles(stroke: Stroke): Stroke {
  const { analysis } = stroke;
  if (analysis?.status !== 'done') return stroke;
  const sides = Object.entries(analysis.sides).map(([side, result]) => [side, { ...result, profile: [] }]);
  return { ...stroke, analysis: { ...analysis, sides: Object.fromEntries(sides) } };
}
