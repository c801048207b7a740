import type { Scope } from '../access/scopes/scope.ts';
import type { RoomKey } from '../database/roomChannel.ts';
import { withoutLenders } from '../results/roomStatuses.ts';
import { Feed, type FeedParts, type Watcher } from './feed.ts';
import { listenToRooms } from './listenToRooms.ts';

export interface Feeds {
  /**
   * Begins to push to the watcher, after a first `status` and what there is of strokes under way; answers how to stop.
   */
  watch(scope: Scope, roomId: string, watcher: Watcher): Promise<() => void>;
  stop(): Promise<void>;
}

/** Pushes what is new in watched rooms, whichever process worked it out. */
export function openFeeds(parts: FeedParts): Feeds {
  const feeds = new Map<string, Feed>();
  const listener = listenToRooms({
    pool: parts.database.pool,
    log: parts.log,
    onRoom: (room) => feeds.get(nameOf(room))?.refreshNews(),
    onPieces: (room) => feeds.get(nameOf(room))?.refreshSamples(),
    onGap: () => {
      for (const feed of feeds.values()) {
        feed.refreshNews();
        feed.refreshSamples();
      }
    },
  });

  return {
    watch: async (scope, roomId, told) => {
      const watcher = scope.visit === undefined ? told : visiting(told);
      await listener.ready();
      const name = nameOf({ accountId: scope.accountId, roomId });
      const feed = feeds.get(name) ?? new Feed(scope, roomId, parts);
      feeds.set(name, feed);
      const stop = (): void => {
        feed.leave(watcher);
        if (!feed.isWatched && feeds.get(name) === feed) feeds.delete(name);
      };
      try {
        await feed.begin(scope, watcher);
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
