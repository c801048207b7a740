import type { Token } from '../access/tokens/tokens.ts';
import type { Database } from '../database/openDatabase.ts';
import { ProblemError } from '../problems.ts';
import type { LivePush } from '../schemas/live.ts';
import type { Feeds } from './feeds.ts';
import { sightOf } from './sight.ts';

const MOST_ROOMS = 50;

interface WatchesParts {
  readonly database: Database;
  readonly feeds: Feeds;
  /** Whose rooms they are, by the token that the connection holds now. */
  readonly holding: () => Token | null;
  readonly send: (push: LivePush) => void;
  /** Says what is wrong with the watching of a room. */
  readonly tell: (problem: ProblemError, roomId: string) => void;
}

/** The rooms that one connection watches, from its opening to its end. */
export class Watches {
  readonly #parts: WatchesParts;
  /** How to stop each, by room; one that is being begun is not among them yet. */
  readonly #stops = new Map<string, () => void>();
  #ended = false;

  constructor(parts: WatchesParts) {
    this.#parts = parts;
  }

  /** Begins to watch a room, or anew. Throws the problem of one that may not be watched. */
  async begin(roomId: string): Promise<void> {
    const { database, feeds, holding, send } = this.#parts;
    const scope = await sightOf(database, holding(), roomId);
    if (!this.#stops.has(roomId) && this.#stops.size >= MOST_ROOMS)
      throw new ProblemError('too-many-requests', `One connection watches at most ${MOST_ROOMS} rooms.`);
    this.stop(roomId);
    const stop = await feeds.watch(scope, roomId, { maySee: () => this.#maySee(roomId), send });
    if (this.#ended) stop();
    else this.#stops.set(roomId, stop);
  }

  stop(roomId: string): void {
    this.#stops.get(roomId)?.();
    this.#stops.delete(roomId);
  }

  /** Stops all of them, and what is only being begun. */
  end(): void {
    this.#ended = true;
    for (const roomId of [...this.#stops.keys()]) this.stop(roomId);
  }

  /** Asked before each push: a session or a grant may have ended. Stops watching where it has, and says so. */
  async #maySee(roomId: string): Promise<boolean> {
    const { database, holding, tell } = this.#parts;
    try {
      await sightOf(database, holding(), roomId);
      return true;
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.stop(roomId);
      tell(error, roomId);
      return false;
    }
  }
}
