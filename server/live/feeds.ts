import type { FastifyBaseLogger } from 'fastify';
import type { Kysely } from 'kysely';
import type pg from 'pg';
import type { Tables } from '../../migrations/tables.ts';
import type { Scope } from '../access/scope.ts';
import type { LivePush } from '../schemas/live.ts';
import type { RoomKey } from './roomChannel.ts';
import { listenToRooms } from './roomListener.ts';
import { readRoomNews, type Told } from './roomNews.ts';

/** Whoever watches a room. */
export interface Watcher {
  /** Whether it may still see the room: asked before each push. It stops watching by itself where it may not. */
  maySee(): Promise<boolean>;
  send(push: LivePush): void;
}

export interface Feeds {
  /** Begins to push to the watcher, after a first `status`; answers how to stop. */
  watch(scope: Scope, roomId: string, watcher: Watcher): Promise<() => void>;
  stop(): Promise<void>;
}

/** One watched room: what was told of it goes to all its watchers in this process, read once for all of them. */
interface Feed {
  readonly scope: Scope;
  readonly roomId: string;
  readonly watchers: Set<Watcher>;
  /** What was told, once the first look was taken. */
  told: Told | undefined;
  /** Ends when the last look that was asked for has ended: looks follow one another. */
  turn: Promise<unknown>;
  /** A look that has not begun will see whatever is told of now: one is enough. */
  queued: boolean;
}

interface FeedParts {
  readonly db: Kysely<Tables>;
  readonly pool: pg.Pool;
  readonly log: FastifyBaseLogger;
}

/** Pushes what is new in watched rooms, whichever process worked it out. */
export function openFeeds({ db, pool, log }: FeedParts): Feeds {
  const feeds = new Map<string, Feed>();

  const refresh = (feed: Feed): void => {
    if (feed.queued) return;
    feed.queued = true;
    inTurn(feed, async () => {
      feed.queued = false;
      await pushNews(db, feed);
    }).catch((error: unknown) => {
      log.error({ err: error, roomId: feed.roomId }, 'A live update could not be made.');
    });
  };
  const listener = listenToRooms({
    pool,
    log,
    onRoom: (room) => {
      const feed = feeds.get(nameOf(room));
      if (feed !== undefined) refresh(feed);
    },
    onGap: () => feeds.forEach(refresh),
  });

  return {
    watch: async (scope, roomId, watcher) => {
      await listener.ready();
      const name = nameOf({ accountId: scope.accountId, roomId });
      const feed = feeds.get(name) ?? {
        scope,
        roomId,
        watchers: new Set<Watcher>(),
        told: undefined,
        turn: Promise.resolve(),
        queued: false,
      };
      feeds.set(name, feed);
      feed.watchers.add(watcher);
      const stop = (): void => {
        feed.watchers.delete(watcher);
        if (feed.watchers.size === 0 && feeds.get(name) === feed) feeds.delete(name);
      };
      try {
        await inTurn(feed, async () => {
          const first = await readRoomNews(db, scope, roomId, feed.told);
          // What is there when the watching begins is no news.
          feed.told ??= first.told;
          watcher.send(first.status);
        });
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

const nameOf = ({ accountId, roomId }: RoomKey): string => `${accountId} ${roomId}`;

function inTurn(feed: Feed, work: () => Promise<void>): Promise<void> {
  const done = feed.turn.then(work);
  // Whoever asked is told of a failure; the next in line goes on all the same.
  feed.turn = done.catch(() => undefined);
  return done;
}

async function pushNews(db: Kysely<Tables>, feed: Feed): Promise<void> {
  if (feed.watchers.size === 0) return;
  const news = await readRoomNews(db, feed.scope, feed.roomId, feed.told);
  feed.told = news.told;
  for (const watcher of [...feed.watchers]) {
    if (!(await watcher.maySee()) || !feed.watchers.has(watcher)) continue;
    for (const push of [...news.fresh, news.status]) watcher.send(push);
  }
}
