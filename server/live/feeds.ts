import { setTimeout } from 'node:timers/promises';
import type { FastifyBaseLogger } from 'fastify';
import type { Kysely } from 'kysely';
import { isUnavailable } from '../../ingest/unavailable.ts';
import type { Tables } from '../../migrations/tables.ts';
import { rowsOf, type Scope } from '../access/scopes/scope.ts';
import { type Database, inScope } from '../database/openDatabase.ts';
import type { RoomKey } from '../database/roomChannel.ts';
import { withoutLenders } from '../results/roomStatuses.ts';
import type { LivePush } from '../schemas/live.ts';
import { listenToRooms } from './listenToRooms.ts';
import { readRoomNews, type Told } from './readRoomNews.ts';
import { Heard, lastPiecesOfStored, pushesOf, readPiecesUnderWay } from './samplesUnderWay.ts';

/** Whoever watches a room. */
interface Watcher {
  /**
   * Whether it may still see the room: asked before each push. It stops watching by itself where it may not, and
   * rejects where that cannot be told for a moment.
   */
  maySee(): Promise<boolean>;
  send(push: LivePush): void;
}

export interface Feeds {
  /**
   * Begins to push to the watcher, after a first `status` and what there is of strokes under way; answers how to stop.
   */
  watch(scope: Scope, roomId: string, watcher: Watcher): Promise<() => void>;
  stop(): Promise<void>;
}

/** One watched room: what was told of it goes to all its watchers in this process, read once for all of them. */
interface Feed {
  readonly scope: Scope;
  readonly roomId: string;
  /**
   * How far each was told of strokes under way: one that began to watch in their midst was told more. Null for one
   * that waits for its first status.
   */
  readonly watchers: Map<Watcher, Heard | null>;
  /** What all of them were told of strokes under way. */
  readonly heard: Heard;
  /** What was told, once the first look was taken. */
  told: Told | undefined;
  /** Ends when the last look that was asked for has ended: looks follow one another. */
  turn: Promise<unknown>;
  /** Looks that have not begun will see whatever is told of now: one of a kind is enough. */
  readonly queued: Set<Look>;
}

type Look = (db: Kysely<Tables>, feed: Feed) => Promise<void>;

interface FeedParts {
  readonly database: Database;
  readonly log: FastifyBaseLogger;
}

/** Between looks at a database that cannot answer for a moment. */
const LOOK_AGAIN_AFTER_MS = 1000;

/** Pushes what is new in watched rooms, whichever process worked it out. */
export function openFeeds({ database, log }: FeedParts): Feeds {
  const feeds = new Map<string, Feed>();

  /** What is new stays new while the database cannot answer: the look is taken again until it can. */
  const lookUntilSeen = async (feed: Feed, look: Look): Promise<void> => {
    while (feed.watchers.size > 0) {
      try {
        return await look(inScope(database, rowsOf(feed.scope)).db, feed);
      } catch (error) {
        log.error({ err: error, roomId: feed.roomId }, 'A live update could not be made.');
        if (!isUnavailable(error)) return;
        await setTimeout(LOOK_AGAIN_AFTER_MS, undefined, { ref: false });
      }
    }
  };
  const refresh = (feed: Feed, look: Look): void => {
    if (feed.queued.has(look)) return;
    feed.queued.add(look);
    void inTurn(feed, () => {
      feed.queued.delete(look);
      return lookUntilSeen(feed, look);
    });
  };
  const refreshRoom = (room: RoomKey, look: Look): void => {
    const feed = feeds.get(nameOf(room));
    if (feed !== undefined) refresh(feed, look);
  };
  const listener = listenToRooms({
    pool: database.pool,
    log,
    onRoom: (room) => refreshRoom(room, pushNews),
    onPieces: (room) => refreshRoom(room, pushSamples),
    onGap: () => {
      for (const feed of feeds.values()) for (const look of [pushNews, pushSamples]) refresh(feed, look);
    },
  });

  return {
    watch: async (scope, roomId, told) => {
      const watcher = scope.visit === undefined ? told : visiting(told);
      await listener.ready();
      const name = nameOf({ accountId: scope.accountId, roomId });
      const feed = feeds.get(name) ?? {
        scope,
        roomId,
        watchers: new Map<Watcher, Heard | null>(),
        heard: new Heard(),
        told: undefined,
        turn: Promise.resolve(),
        queued: new Set<Look>(),
      };
      feeds.set(name, feed);
      const heard = new Heard();
      feed.watchers.set(watcher, null);
      const stop = (): void => {
        feed.watchers.delete(watcher);
        if (feed.watchers.size === 0 && feeds.get(name) === feed) feeds.delete(name);
      };
      try {
        const begun = inTurn(feed, async () => {
          const { db } = inScope(database, rowsOf(scope));
          const first = await readRoomNews(db, scope, roomId, feed.told);
          // What is there when the watching begins is no news.
          feed.told ??= first.told;
          feed.watchers.set(watcher, heard);
          watcher.send(first.status);
        });
        // The next in turn: nothing newer is told before it.
        refresh(feed, (db) => catchUp(db, feed, watcher, heard));
        await begun;
        return stop;
      } catch (error) {
        stop();
        throw error;
      }
    },
    stop: async () => {
      feeds.clear();
      await listener.stop();
    },
  };
}

/** One feed serves those at home and those whom a grant shows the room: these are told of no other room. */
function visiting(watcher: Watcher): Watcher {
  return {
    maySee: () => watcher.maySee(),
    send: (push) =>
      watcher.send(push.type === 'status' ? { ...push, status: withoutLenders(push.status) } : push),
  };
}

const nameOf = ({ accountId, roomId }: RoomKey): string => `${accountId} ${roomId}`;

function inTurn(feed: Feed, work: () => Promise<void>): Promise<void> {
  const done = feed.turn.then(work);
  // Whoever asked is told of a failure; the next in line goes on all the same.
  feed.turn = done.catch(() => undefined);
  return done;
}

async function pushNews(db: Kysely<Tables>, feed: Feed): Promise<void> {
  const seeing = await watchersThatMaySee(feed);
  if (seeing.length === 0) return;
  const news = await readRoomNews(db, feed.scope, feed.roomId, feed.told);
  feed.told = news.told;
  for (const watcher of seeing) {
    if (!feed.watchers.has(watcher)) continue;
    for (const push of [...news.fresh, news.status]) watcher.send(push);
  }
}

/** Asked before anything is told to any of them: a look that fails has told nothing, and can be taken again. */
async function watchersThatMaySee(feed: Feed): Promise<Watcher[]> {
  const seeing: Watcher[] = [];
  for (const [watcher, heard] of [...feed.watchers])
    if (heard !== null && (await watcher.maySee())) seeing.push(watcher);
  return seeing;
}

/** Tells one that begins to watch of all there is of strokes under way. */
async function catchUp(db: Kysely<Tables>, feed: Feed, watcher: Watcher, heard: Heard): Promise<void> {
  heard.note(await lastPiecesOfStored(db, feed.scope, feed.roomId));
  while (feed.watchers.get(watcher) === heard) {
    const pieces = await readPiecesUnderWay(db, feed.scope, feed.roomId, heard);
    if (pieces.length === 0) return;
    for (const push of pushesOf(feed.roomId, pieces)) watcher.send(push);
    heard.note(pieces);
  }
}

async function pushSamples(db: Kysely<Tables>, feed: Feed): Promise<void> {
  for (;;) {
    const pieces = await readPiecesUnderWay(db, feed.scope, feed.roomId, feed.heard);
    if (pieces.length === 0) return;
    const seeing = await watchersThatMaySee(feed);
    feed.heard.note(pieces);
    for (const watcher of seeing) {
      const heard = feed.watchers.get(watcher);
      if (!heard) continue;
      const news = pieces.filter((piece) => heard.isNews(piece));
      if (news.length === 0) continue;
      for (const push of pushesOf(feed.roomId, news)) watcher.send(push);
      heard.note(news);
    }
  }
}
