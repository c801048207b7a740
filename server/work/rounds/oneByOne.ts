import type { Kysely } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import type { RoomKey } from '../../database/roomChannel.ts';
import type { AnalysisLog } from '../inHand/analysisLog.ts';
import type { StrokeInHand } from '../inHand/strokeInHand.ts';
import { analyseRoom } from './analyseRoom.ts';

const FIRST_REST_MS = 1000;
const LONGEST_REST_MS = 300_000;

/** Rooms that take longer are done one after the other, on another connection, while the rest goes on. */
export class OneByOne {
  readonly #db: Kysely<Tables>;
  readonly #log: AnalysisLog;
  readonly #stopping: AbortSignal;
  readonly #hand: StrokeInHand;
  /** Waiting or under way. */
  readonly #rooms = new Map<string, RoomKey>();
  /** Those that failed rest for a while, longer each time. */
  readonly #resting = new Map<string, { readonly until: number; readonly restMs: number }>();
  #working: Promise<void> = Promise.resolve();

  constructor(db: Kysely<Tables>, log: AnalysisLog, stopping: AbortSignal, hand: StrokeInHand) {
    this.#db = db;
    this.#log = log;
    this.#stopping = stopping;
    this.#hand = hand;
  }

  /** The ids of those that nobody else here needs to look at. */
  rooms(): string[] {
    const now = performance.now();
    const resting = [...this.#resting].filter(([, { until }]) => until > now).map(([roomId]) => roomId);
    return [...this.#rooms.keys(), ...resting];
  }

  add(room: RoomKey): void {
    if (this.#rooms.has(room.roomId)) return;
    this.#rooms.set(room.roomId, room);
    this.#working = this.#working.then(() => this.#work(room));
  }

  /** Resolves when none is under way. */
  async ended(): Promise<void> {
    await this.#working;
  }

  async #work(room: RoomKey): Promise<void> {
    try {
      if (!this.#stopping.aborted) await analyseRoom(this.#db, room, this.#log, this.#stopping, this.#hand);
      this.#resting.delete(room.roomId);
    } catch (error) {
      this.#log.error({ err: error, roomId: room.roomId }, 'A room could not be analysed.');
      const before = this.#resting.get(room.roomId)?.restMs ?? FIRST_REST_MS / 2;
      const restMs = Math.min(LONGEST_REST_MS, 2 * before);
      this.#resting.set(room.roomId, { until: performance.now() + restMs, restMs });
    } finally {
      this.#rooms.delete(room.roomId);
    }
  }
}
