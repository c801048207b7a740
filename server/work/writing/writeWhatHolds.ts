import type { Kysely } from 'kysely';
import { codeOf, IS_GONE } from '../../../ingest/errorCode.ts';
import { holdRooms } from '../../../ingest/holdRooms.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { isGivenUp } from '../../database/inTransaction.ts';
import type { EventsOfRoom } from '../reading/eventsOfRooms.ts';
import { whatStillHolds } from './whatStillHolds.ts';
import { finishRooms, type RoomResults, writeHistories } from './writeHistory.ts';

/** What was found of a room, and the events that it was found in. */
export interface FoundOfRoom extends RoomResults {
  readonly read: EventsOfRoom;
}

/** What was found and is written now. */
interface Written {
  readonly rooms: readonly FoundOfRoom[];
  /** Of their rows in `room_results`; null: there are none. */
  readonly resultsVersion: string | null;
}

const NOTHING: Written = { rooms: [], resultsVersion: null };

/**
 * Writes what was found of many rooms, of each all or nothing, and answers those written: the history of another was
 * changed since it was read. The rooms' progress, for which senders wait, is held only once all the rest is written,
 * for the moment that it takes to see that it holds.
 */
export async function writeWhatHolds(db: Kysely<Tables>, found: readonly FoundOfRoom[]): Promise<Written> {
  let left = found;
  while (left.length > 0) {
    try {
      const rooms = left;
      return { rooms, resultsVersion: await db.transaction().execute((trx) => writeAll(trx, rooms)) };
    } catch (error) {
      // Other rooms may be waited for by whoever Postgres preferred, or one of them was removed meanwhile, or a stroke:
      // each is better done by itself.
      if (isGivenUp(error) || codeOf(error) === IS_GONE) return NOTHING;
      if (!(error instanceof Overtaken)) throw error;
      const { roomIds } = error;
      left = left.filter(({ room }) => !roomIds.has(room.roomId));
    }
  }
  return NOTHING;
}

/** Some of what is being written holds no longer: all of it is taken back. */
class Overtaken extends Error {
  readonly roomIds: ReadonlySet<string>;

  constructor(roomIds: ReadonlySet<string>) {
    super('Rooms were changed while they were gone through.');
    this.name = 'Overtaken';
    this.roomIds = roomIds;
  }
}

async function writeAll(trx: Kysely<Tables>, found: readonly FoundOfRoom[]): Promise<string | null> {
  await holdRooms(
    trx,
    found.map(({ room }) => room),
  );
  const resultsVersion = await writeHistories(trx, found);
  const holding = await whatStillHolds(
    trx,
    found.map(({ read }) => read),
  );
  const dirtyFrom = new Map(holding.map((held) => [held.roomId, held.dirtyFrom]));
  const overtaken = found.map(({ room }) => room.roomId).filter((roomId) => !dirtyFrom.has(roomId));
  if (overtaken.length > 0) throw new Overtaken(new Set(overtaken));
  await finishRooms(
    trx,
    found.map(({ room }) => ({ room, dirtyFrom: dirtyFrom.get(room.roomId) ?? null })),
  );
  return resultsVersion;
}
