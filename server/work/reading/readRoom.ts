import { type Kysely, sql } from 'kysely';
import type { RoomDescription } from '../../../analysis/trace.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { describeRoom } from '../../things/describeRoom.ts';
import { type Peers, peersOf } from '../../things/peers.ts';

export interface RoomToAnalyse {
  readonly accountId: string;
  readonly roomId: string;
  readonly description: RoomDescription;
  /** Who may lend it a normal; null: its coach's model is not known, or the coach was deleted. */
  readonly peers: Peers | null;
  /** Changes with every change of the room, so that what was made of an older description can be told. */
  readonly version: string;
}

export async function readRoom(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
): Promise<RoomToAnalyse | null> {
  const row = await db
    .selectFrom('rooms as r')
    .innerJoin('coaches as c', (join) =>
      join.onRef('c.account_id', '=', 'r.account_id').onRef('c.id', '=', 'r.coach_id'),
    )
    .selectAll('r')
    .select(['c.model', 'c.deleted_at', sql<string>`r.xmin::text`.as('version')])
    .where('r.account_id', '=', accountId)
    .where('r.id', '=', roomId)
    .executeTakeFirst();
  if (row === undefined) return null;
  const peers = row.deleted_at === null ? peersOf(row) : null;
  return { accountId, roomId, description: describeRoom(row), peers, version: row.version };
}
