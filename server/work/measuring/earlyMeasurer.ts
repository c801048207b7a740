import type { RoomDescription } from '../../../analysis/trace.ts';
import type { Measurer, RoomRow } from '../../../ingest/measurer.ts';
import type { BroughtAnalysis, StrokeToStore } from '../../../ingest/strokeToStore.ts';
import { BoundedMap } from '../../boundedMap.ts';
import { describeRoom } from '../../things/describeRoom.ts';
import { isOfThisAnalysis } from './measuredBy.ts';
import { MeasuringInPieces } from './measuringInPieces.ts';
import { type MeasureThread, startMeasureThread } from './startMeasureThread.ts';

/** Of more than so many rooms, those heard of longest ago are forgotten. */
const MOST_ROOMS = 10_000;
/** A longer one would keep its sender, and others, waiting. */
const MOST_SAMPLES = 20_000;
/** Whoever sends more together catches up, and may wait while others go first. */
const MOST_TOGETHER = 16;
/** Of still more together, an early acknowledgement is worth more than early results. */
const MOST_IN_PIECES = 128;
/** So many strokes wait for their turn at most; who comes then is measured once it is stored, and acknowledged before. */
const MOST_WAITING = 64;

interface Lane extends Pick<MeasureThread, 'measure'> {
  readonly room: number;
}

interface KnownRoom {
  readonly measuredBy: string;
  /** Null: its strokes are measured by another version of the analysis than ours. */
  readonly description: RoomDescription | null;
}

/**
 * Measures strokes of rooms that this process knows of, as far as that keeps nobody waiting. It knows of a room what was
 * told when a stroke of it was stored; the database tells again whenever that has changed.
 */
export class EarlyMeasurer implements Measurer {
  readonly #rooms = new BoundedMap<string, KnownRoom>(MOST_ROOMS);
  #thread: MeasureThread | null = null;
  #inPieces: MeasuringInPieces | null = null;
  #stopped = false;

  /** The first one that is told begins the thread: a process without strokes needs none. */
  learn(room: RoomRow, measuredBy: string): void {
    if (this.#stopped) return;
    const description = isOfThisAnalysis(measuredBy) ? describeRoom(room) : null;
    this.#rooms.set(nameOf(room.account_id, room.id), { measuredBy, description });
    if (this.#thread !== null) return;
    this.#thread = startMeasureThread();
    this.#inPieces = new MeasuringInPieces(this.#thread);
  }

  async measure(strokes: readonly StrokeToStore[]): Promise<readonly StrokeToStore[]> {
    const lane = this.#laneFor(strokes.length);
    if (lane === null) return strokes;
    const rooms = strokes.map(({ row }) => this.#rooms.get(nameOf(row.account_id, row.room_id)));
    let left = lane.room;
    const places: number[] = [];
    const asked = strokes.flatMap(({ recorded: { sides, supply, ambientC, direction } }, i) => {
      const room = rooms[i]?.description;
      if (!room || left === 0 || samplesOf(strokes[i]) > MOST_SAMPLES) return [];
      left--;
      places.push(i);
      return [{ recorded: { sides, supply, ambientC }, direction, room }];
    });
    const analyses = asked.length === 0 ? [] : await lane.measure(asked);
    const brought = rooms.map((room): BroughtAnalysis | null =>
      room === undefined ? null : { measuredBy: room.measuredBy, analysis: null },
    );
    for (const [n, i] of places.entries()) {
      const measuredBy = rooms[i]?.measuredBy;
      if (measuredBy !== undefined) brought[i] = { measuredBy, analysis: analyses[n] };
    }
    return strokes.map((stroke, i) => ({ ...stroke, brought: brought[i] }));
  }

  async stop(): Promise<void> {
    this.#stopped = true;
    await this.#thread?.stop();
    this.#thread = null;
    this.#inPieces = null;
  }

  /** Who measures so many together, and how many of them at most; null: a process that has stored no stroke yet. */
  #laneFor(together: number): Lane | null {
    const [thread, inPieces] = [this.#thread, this.#inPieces];
    if (thread === null || inPieces === null) return null;
    const isFree = thread.isReady && together <= MOST_IN_PIECES;
    if (together > MOST_TOGETHER) {
      return { room: isFree ? inPieces.room : 0, measure: (asked) => inPieces.measure(asked) };
    }
    const room = isFree ? Math.max(0, MOST_WAITING - thread.waiting) : 0;
    return { room, measure: (asked) => thread.measure(asked) };
  }
}

const nameOf = (accountId: string, roomId: string | null): string => `${accountId} ${roomId}`;

function samplesOf({ recorded: { sides, supply } }: StrokeToStore): number {
  return sides.reduce((sum, { amps }) => sum + amps.length, supply?.volts.length ?? 0);
}
