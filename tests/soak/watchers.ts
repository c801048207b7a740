import { setTimeout as pause } from 'node:timers/promises';
import { openFeed } from '../support/liveFeed.ts';
import type { Caller } from './insist.ts';

export interface Watcher {
  readonly roomId: string;
  /** What it was told last of how the room stands. */
  strokes: number | null;
  pending: number | null;
  /** How often its feed ended and was opened anew. */
  reopened: number;
}

const AGAIN_AFTER_MS = 500;

/** Watches a room as a page does: opens its feed anew when it ends, or says that it cannot go on. */
export function watchRoom(person: Caller, roomId: string, until: AbortSignal): Watcher {
  const watcher: Watcher = { roomId, strokes: null, pending: null, reopened: 0 };
  void follow(person, watcher, until);
  return watcher;
}

async function follow(person: Caller, watcher: Watcher, until: AbortSignal): Promise<void> {
  for (; !until.aborted; watcher.reopened++) {
    try {
      const feed = await openFeed(person.url(), { authorization: `Bearer ${person.token}` });
      const close = () => feed.close();
      until.addEventListener('abort', close, { once: true });
      feed.say({ type: 'watch', roomId: watcher.roomId });
      for (;;) {
        const push = await feed.next();
        if (push.type === 'problem') break;
        if (push.type !== 'status') continue;
        watcher.strokes = push.status.strokes;
        watcher.pending = push.status.pending;
      }
      until.removeEventListener('abort', close);
      close();
    } catch {
      // Refused, or closed: what a page does then is what follows.
    }
    await pause(AGAIN_AFTER_MS);
  }
}
