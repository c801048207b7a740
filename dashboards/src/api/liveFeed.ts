import { knownStatuses } from './knownStatuses.ts';
import type { LivePush } from './types.ts';
import { watchSilence } from './watchSilence.ts';

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

/**
 * Watches rooms over one WebSocket, opens it anew at growing intervals when it closes, and answers how to stop. A network
 * that goes closes nothing by itself: what the device says of it is taken for the end of the one, and the time for the next;
 * where it says nothing, a long silence is.
 */
export function openLiveFeed({ roomIds, onBegin, onPush, onLive }: FeedParts): () => void {
  /** Null: between two of them. What one that was let go still says is not heard. */
  let socket: WebSocket | null = null;
  let waitMs = FIRST_TRY_AGAIN_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const statuses = knownStatuses();
  const silence = watchSilence(
    () => {
      statuses.ask(roomIds[0]);
      if (socket?.readyState === WebSocket.OPEN) watch(socket, roomIds[0]);
    },
    () => openNow(),
  );

  const letGo = () => {
    clearTimeout(timer);
    silence.stop();
    statuses.forget();
    const was = socket;
    socket = null;
    was?.close();
    onLive(false);
  };
  const heard = (push: LivePush) => {
    silence.heard();
    if (push.type === 'problem') {
      // One room of several that is gone says nothing of the others.
      if (push.roomId === undefined || roomIds.length === 1) socket?.close();
      return;
    }
    // The first status tells that the watching has begun.
    if (push.type === 'status') {
      onLive(true);
      waitMs = FIRST_TRY_AGAIN_MS;
      if (!statuses.isNews(push)) return;
    }
    onPush(push);
  };
  const open = () => {
    const made = new WebSocket(`${location.origin.replace(/^http/, 'ws')}/api/v1/live`);
    socket = made;
    made.onopen = () => {
      if (socket !== made) return;
      onBegin?.();
      for (const roomId of roomIds.slice(0, MOST_WATCHED)) watch(made, roomId);
    };
    // The service's own schema gives its pushes their shape.
    made.onmessage = ({ data }) => socket === made && heard(JSON.parse(data) as LivePush);
    made.onclose = ({ code }) => {
      if (socket !== made) return;
      letGo();
      if (code === NOT_SIGNED_IN) return;
      timer = setTimeout(open, waitMs);
      waitMs = Math.min(LAST_TRY_AGAIN_MS, 2 * waitMs);
    };
  };
  const openNow = () => {
    letGo();
    waitMs = FIRST_TRY_AGAIN_MS;
    open();
  };

  open();
  window.addEventListener('offline', letGo);
  window.addEventListener('online', openNow);
  return () => {
    window.removeEventListener('offline', letGo);
    window.removeEventListener('online', openNow);
    letGo();
  };
}

const watch = (socket: WebSocket, roomId: string): void =>
  socket.send(JSON.stringify({ type: 'watch', roomId }));
