import type { Kysely } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import type { Scope } from '../access/scopes/scope.ts';
import { roomStatuses } from '../results/roomStatuses.ts';
import { strokeView } from '../results/strokeView.ts';
import { listWarnings } from '../results/warnings.ts';
import type { LivePush } from '../schemas/live.ts';
import { findRoom } from '../things/rooms.ts';

/** What was told of a room already. */
export interface Told {
  readonly strokes: ReadonlySet<string>;
  /** By id, as it was told. */
  readonly warnings: ReadonlyMap<string, string>;
}

const NOTHING_TOLD: Told = { strokes: new Set(), warnings: new Map() };

/** A stroke is news for this long after it came in; the lists have the rest. */
const NEWS_FOR_MS = 10 * 60_000;
const MOST_STROKES = 100;
const MOST_WARNINGS = 20;

interface RoomNews {
  readonly status: LivePush;
  /** Strokes and warnings that were not told yet, oldest first. */
  readonly fresh: readonly LivePush[];
  readonly told: Told;
}

/** Reads how a room stands, as those at home see it, and what of it was not told yet. */
export async function readRoomNews(
  db: Kysely<Tables>,
  scope: Scope,
  roomId: string,
  told: Told = NOTHING_TOLD,
): Promise<RoomNews> {
  const room = await findRoom(db, scope.accountId, roomId);
  const [status] = await roomStatuses(db, { accountId: scope.accountId, byGrant: false }, [room]);
  const strokes = (await recentStrokes(db, scope, roomId)).map(strokeView);
  const { items } = await listWarnings(db, scope, roomId, { state: 'all', limit: MOST_WARNINGS });
  const warnings = items.reverse().map((warning) => ({ warning, text: JSON.stringify(warning) }));
  return {
    status: { type: 'status', roomId, status },
    fresh: [
      ...strokes
        .filter((stroke) => !told.strokes.has(stroke.id))
        .map((stroke): LivePush => ({ type: 'stroke', roomId, stroke })),
      ...warnings
        .filter(({ warning, text }) => told.warnings.get(warning.id) !== text)
        .map(({ warning }): LivePush => ({ type: 'warning', roomId, warning })),
    ],
    told: {
      strokes: new Set(strokes.map(({ id }) => id)),
      warnings: new Map(warnings.map(({ warning, text }) => [warning.id, text])),
    },
  };
}

/** Strokes that came in lately and are worked out, in the order in which they came. */
async function recentStrokes(db: Kysely<Tables>, { accountId }: Scope, roomId: string) {
  const rows = await db
    .selectFrom('strokes')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('received_at', '>', new Date(Date.now() - NEWS_FOR_MS))
    .where('analysis', 'is not', null)
    .orderBy('received_at', 'desc')
    .limit(MOST_STROKES)
    .execute();
  return rows.reverse();
}
