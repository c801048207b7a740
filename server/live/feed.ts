import { setTimeout } from 'node:timers/promises';
import type { FastifyBaseLogger } from 'fastify';
import type { Kysely } from 'kysely';
import { isUnavailable } from '../../ingest/unavailable.ts';
import type { Tables } from '../../migrations/tables.ts';
import { rowsOf, type Scope } from '../access/scopes/scope.ts';
import { type Database, inScope } from '../database/openDatabase.ts';
import type { LivePush } from '../schemas/live.ts';
import { readRoomNews, type Told } from './readRoomNews.ts';
import { Heard, lastPiecesOfStored, pushesOf, readPiecesUnderWay } from './samplesUnderWay.ts';

/** Whoever watches a room. */
export interface Watcher {
  /**
   * Whether it may still see the room: asked before each push. It stops watching by itself where it may not, and
   * rejects where that cannot be told for a moment.
   */
  maySee(): Promise<boolean>;
  send(push: LivePush): void;
}

/** Reads what is new, and tells it. */
type Look = (db: Kysely<Tables>) => Promise<void>;

export interface FeedParts {
  readonly database: Database;
  readonly log: FastifyBaseLogger;
}

/** Between looks at a database that cannot answer for a moment. */
const LOOK_AGAIN_AFTER_MS = 1000;

/** One watched room: what was told of it goes to all its watchers in this process, read once for all of them. */
export class Feed {
  readonly #scope: Scope;
  readonly #roomId: string;
  readonly #parts: FeedParts;
  /**
   * How far each was told of strokes under way: one that began to watch in their midst was told more. Null for one
   * that waits for its first status.
   */
  readonly #watchers = new Map<Watcher, Heard | null>();
  /** What all of them were told of strokes under way. */
  readonly #heard = new Heard();
  /** What was told, once the first look was taken. */
  #told: Told | undefined;
  /** Ends when the last look that was asked for has ended: looks follow one another. */
  #turn: Promise<unknown> = Promise.resolve();
  /** Looks that have not begun will see whatever is told of now: one of a kind is enough. */
  readonly #queued = new Set<Look>();

  constructor(scope: Scope, roomId: string, parts: FeedParts) {
    this.#scope = scope;
    this.#roomId = roomId;
    this.#parts = parts;
  }

  get isWatched(): boolean {
    return this.#watchers.size > 0;
  }

  /** Tells a new watcher, in its own scope, the status and then what there is of strokes under way. */
  async begin(scope: Scope, watcher: Watcher): Promise<void> {
    const heard = new Heard();
    this.#watchers.set(watcher, null);
    const begun = this.#inTurn(async () => {
      const { db } = inScope(this.#parts.database, rowsOf(scope));
      const first = await readRoomNews(db, scope, this.#roomId, this.#told);
      // What is there when the watching begins is no news.
      this.#told ??= first.told;
      this.#watchers.set(watcher, heard);
      watcher.send(first.status);
    });
    // The next in turn: nothing newer is told before it.
    this.#refresh((db) => this.#catchUp(db, watcher, heard));
    await begun;
  }

  leave(watcher: Watcher): void {
    this.#watchers.delete(watcher);
  }

  /** The room's results are others by now. */
  refreshNews(): void {
    this.#refresh(this.#pushNews);
  }

  /** There is more of strokes under way. */
  refreshSamples(): void {
    this.#refresh(this.#pushSamples);
  }

  #refresh(look: Look): void {
    if (this.#queued.has(look)) return;
    this.#queued.add(look);
    void this.#inTurn(() => {
      this.#queued.delete(look);
      return this.#lookUntilSeen(look);
    });
  }

  #inTurn(work: () => Promise<void>): Promise<void> {
    const done = this.#turn.then(work);
    // Whoever asked is told of a failure; the next in line goes on all the same.
    this.#turn = done.catch(() => undefined);
    return done;
  }

  /** What is new stays new while the database cannot answer: the look is taken again until it can. */
  async #lookUntilSeen(look: Look): Promise<void> {
    const { database, log } = this.#parts;
    while (this.isWatched) {
      try {
        return await look(inScope(database, rowsOf(this.#scope)).db);
      } catch (error) {
        log.error({ err: error, roomId: this.#roomId }, 'A live update could not be made.');
        if (!isUnavailable(error)) return;
        await setTimeout(LOOK_AGAIN_AFTER_MS, undefined, { ref: false });
      }
    }
  }

  /** Asked before anything is told to any of them: a look that fails has told nothing, and can be taken again. */
  async #watchersThatMaySee(): Promise<Watcher[]> {
    const seeing: Watcher[] = [];
    for (const [watcher, heard] of [...this.#watchers])
      if (heard !== null && (await watcher.maySee())) seeing.push(watcher);
    return seeing;
  }

  readonly #pushNews: Look = async (db) => {
    const seeing = await this.#watchersThatMaySee();
    if (seeing.length === 0) return;
    const news = await readRoomNews(db, this.#scope, this.#roomId, this.#told);
    this.#told = news.told;
    for (const watcher of seeing) {
      if (!this.#watchers.has(watcher)) continue;
      for (const push of [...news.fresh, news.status]) watcher.send(push);
    }
  };

  readonly #pushSamples: Look = async (db) => {
    for (;;) {
      const pieces = await readPiecesUnderWay(db, this.#scope, this.#roomId, this.#heard);
      if (pieces.length === 0) return;
      const seeing = await this.#watchersThatMaySee();
      this.#heard.note(pieces);
      for (const watcher of seeing) {
        const heard = this.#watchers.get(watcher);
        if (!heard) continue;
        const news = pieces.filter((piece) => heard.isNews(piece));
        if (news.length === 0) continue;
        for (const push of pushesOf(this.#roomId, news)) watcher.send(push);
        heard.note(news);
      }
    }
  };

  /** Tells one that begins to watch of all there is of strokes under way. */
  async #catchUp(db: Kysely<Tables>, watcher: Watcher, heard: Heard): Promise<void> {
    heard.note(await lastPiecesOfStored(db, this.#scope, this.#roomId));
    while (this.#watchers.get(watcher) === heard) {
      const pieces = await readPiecesUnderWay(db, this.#scope, this.#roomId, heard);
      if (pieces.length === 0) return;
      for (const push of pushesOf(this.#roomId, pieces)) watcher.send(push);
      heard.note(pieces);
    }
  }
}
