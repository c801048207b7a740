import type { LivePush } from './types.ts';

const FIRST_TRY_AGAIN_MS = 2_000;
const LAST_TRY_AGAIN_MS = 60_000;
/** The service's own code: it does not know who is calling. Another try would hear the same. */
const NOT_SIGNED_IN = 4401;
/** As many as the service lets one connection watch. */
export const MOST_WATCHED = 50;

interface FeedParts {
  readonly roomIds: readonly string[];
  /** Each time that it was opened, before anything is pushed. */
  readonly onBegin?: () => void;
  readonly onPush: (push: LivePush) => void;
  /** While the feed is not open, the page must ask. */
  readonly onLive: (live: boolean) => void;
}

/** Watches rooms over one WebSocket, opens it anew at growing intervals when it closes, and answers how to stop. */
export function openLiveFeed({ roomIds, onBegin, onPush, onLive }: FeedParts): () => void {
  let socket: WebSocket;
  let wanted = true;
  let waitMs = FIRST_TRY_AGAIN_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const heard = (push: LivePush) => {
    if (!wanted) return;
    if (push.type === 'problem') {
      // One room of several that is gone says nothing of the others.
      if (push.roomId === undefined || roomIds.length === 1) socket.close();
      return;
    }
    // The first status tells that the watching has begun.
    if (push.type === 'status') {
      onLive(true);
      waitMs = FIRST_TRY_AGAIN_MS;
    }
    onPush(push);
  };
  const open = () => {
    socket = new WebSocket(`${location.origin.replace(/^http/, 'ws')}/api/v1/live`);
    socket.onopen = () => {
      onBegin?.();
      for (const roomId of roomIds.slice(0, MOST_WATCHED))
        socket.send(JSON.stringify({ type: 'watch', roomId }));
    };
    // The service's own schema gives its pushes their shape.
    socket.onmessage = ({ data }) => heard(JSON.parse(data) as LivePush);
    socket.onclose = ({ code }) => {
      if (!wanted) return;
      onLive(false);
      if (code === NOT_SIGNED_IN) return;
      timer = setTimeout(open, waitMs);
      waitMs = Math.min(LAST_TRY_AGAIN_MS, 2 * waitMs);
    };
  };
  open();
  return () => {
    wanted = false;
    clearTimeout(timer);
    socket.close();
    onLive(false);
  };
}
