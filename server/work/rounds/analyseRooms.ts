import type { Kysely } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import type { RoomKey } from '../../database/roomChannel.ts';
import type { AnalysisLog } from '../inHand/analysisLog.ts';
import { type Turns, WorkStopped } from '../inHand/turns.ts';
import { foldEvents } from '../judging/foldHistory.ts';
import { measureBatch } from '../measuring/measureBatch.ts';
import { type EventsOfRoom, eventsOfRooms } from '../reading/eventsOfRooms.ts';
import { readDirtyRooms } from '../reading/readDirtyRooms.ts';
import type { RoomMemory } from '../remembered/roomMemory.ts';
import { type FoundOfRoom, writeWhatHolds } from '../writing/writeWhatHolds.ts';

/** Strokes of one room gone through together with other rooms; of more, the room is done by itself. */
const MOST_STROKES = 50;

/**
 * Brings many rooms up to date together, in some ten statements for all of them: most have a stroke or two, and the
 * round trips would cost more than the analysis. Answers the rooms that are better done one by one (`analyseRoom`):
 * long histories, changes in what was just gone through, strokes that cannot be judged or must be measured anew. The caller holds the rooms.
 */
export async function analyseRooms(
  db: Kysely<Tables>,
  keys: readonly RoomKey[],
  log: AnalysisLog,
  turns: Turns,
  memory: RoomMemory,
): Promise<readonly RoomKey[]> {
  const dirty = await readDirtyRooms(db, keys, memory);
  const rooms = dirty.map(({ room }) => room);
  const sound = dirty.filter(({ isMismeasured }) => !isMismeasured);
  while (
    await measureBatch(
      db,
      sound.map(({ room }) => room),
      log,
      turns,
    )
  );
  const read = await eventsOfRooms(db, sound, MOST_STROKES);
  const left = new Map(rooms.map((room) => [room.roomId, room]));
  const folded = await foldAll(read, turns);
  const { rooms: written, resultsVersion } = await writeWhatHolds(db, folded);
  for (const { room, folded } of written) {
    left.delete(room.roomId);
    if (resultsVersion !== null) memory.keep(room.roomId, folded, resultsVersion);
  }
  return [...left.values()];
}

/**
 * A room whose events cannot be gone through is left out: done by itself, the stroke to blame is found. So is one that
 * may lend or be lent to otherwise than before: what it borrows must be looked for.
 */
async function foldAll(read: readonly EventsOfRoom[], turns: Turns): Promise<FoundOfRoom[]> {
  const results: FoundOfRoom[] = [];
  for (const one of read) {
    const { room, from, dirtyFrom } = one.dirty;
    if (room.peers !== null && from === null) continue;
    try {
      const folded = await foldEvents(room, { from, since: dirtyFrom }, [[...one.events]], turns);
      if (room.peers === null || folded.isSettled) results.push({ room, folded, read: one });
    } catch (error) {
      if (error instanceof WorkStopped) throw error;
    }
  }
  return results;
}
