import type { Kysely } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import type { RoomKey } from '../../database/roomChannel.ts';
import { rest } from '../../rest.ts';
import type { AnalysisLog } from '../inHand/analysisLog.ts';
import type { StrokeInHand } from '../inHand/strokeInHand.ts';
import { Turns, WorkStopped } from '../inHand/turns.ts';
import { RoomMemory } from '../remembered/roomMemory.ts';
import { analyseRooms } from './analyseRooms.ts';
import { type Claim, claimRooms, releaseRooms } from './claimRooms.ts';
import { OneByOne } from './oneByOne.ts';

/**
 * The rest between two looks for rooms that are out of date, which cost one small index scan each. After work it is as
 * long as the work was: what comes in of one room meanwhile is gone through together, and its results are written
 * once, which is most of the cost of a single stroke.
 */
const SHORTEST_REST_MS = 100;
const LONGEST_REST_MS = 500;
const ROOMS_AT_ONCE = 64;
/** After the database failed. */
const TRY_AGAIN_AFTER_MS = 1000;

/**
 * Looks for rooms whose results are out of date and brings them up to date, until it is told to stop. Any number may
 * run on one database, in any number of processes: a room is held by one of them at a time, and what one leaves undone
 * another finds.
 */
export async function keepUpToDate(
  db: Kysely<Tables>,
  log: AnalysisLog,
  stopping: AbortSignal,
  hand: StrokeInHand,
): Promise<void> {
  const oneByOne = new OneByOne(db, log, stopping, hand);
  while (!stopping.aborted) {
    try {
      await db.connection().execute((connection) => {
        const turns = new Turns(stopping, hand);
        // Of this connection alone: a server that died may have lost what was written last, and names what comes then alike.
        return lookAgainAndAgain(connection, { oneByOne, memory: new RoomMemory(), log, turns, stopping });
      });
    } catch (error) {
      if (error instanceof WorkStopped || stopping.aborted) break;
      log.error({ err: error }, 'The analysis could not go on.');
      await rest(TRY_AGAIN_AFTER_MS, stopping);
    }
  }
  await oneByOne.ended();
}

interface LookParts {
  readonly oneByOne: OneByOne;
  readonly memory: RoomMemory;
  readonly log: AnalysisLog;
  readonly turns: Turns;
  readonly stopping: AbortSignal;
}

/** Takes up what is out of date, round after round, on one connection. Throws where that is lost. */
async function lookAgainAndAgain(
  connection: Kysely<Tables>,
  { oneByOne, memory, log, turns, stopping }: LookParts,
): Promise<void> {
  let after: RoomKey | null = null;
  while (!stopping.aborted) {
    const started = performance.now();
    const claim: Claim = await claimRooms(connection, after, oneByOne.rooms(), ROOMS_AT_ONCE);
    after = claim.next;
    try {
      if (claim.rooms.length > 0) {
        const left = await analyseRooms(connection, claim.rooms, log, turns, memory);
        // Before the others may take them up.
        await releaseRooms(connection);
        for (const room of left) oneByOne.add(room);
        log.done?.({ rooms: claim.rooms.length, seconds: (performance.now() - started) / 1000 });
      }
    } catch (error) {
      // A connection that is lost has let go of them by itself, and fails here again.
      await releaseRooms(connection);
      throw error;
    }
    // Where there were as many as can be taken at once there are more.
    if (after !== null) continue;
    const tookMs = performance.now() - started;
    await rest(Math.min(LONGEST_REST_MS, Math.max(SHORTEST_REST_MS, tookMs)), stopping);
  }
}
