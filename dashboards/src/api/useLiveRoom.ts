import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { SessionContext } from '../session.ts';
import type { LivePush, RoomStatus } from './types.ts';

const FIRST_TRY_AGAIN_MS = 2_000;
const LAST_TRY_AGAIN_MS = 60_000;
/** The service's own code: it does not know who is calling. Another try would hear the same. */
const NOT_SIGNED_IN = 4401;

/**
 * Watches a room and calls `onNews` with its status whenever its results were written anew, and once at each
 * beginning (`isFirst`: the very first). `onPush` hears all that is pushed, and null whenever the feed begins. Answers whether the feed is open: while it is not, the page must ask.
 */
export function useLiveRoom(
  roomId: string,
  onNews: (status: RoomStatus, isFirst: boolean) => void,
  onPush: (push: LivePush | null) => void = () => {},
): boolean {
  const { epoch } = useContext(SessionContext);
  const [live, setLive] = useState(false);
  const tell = useRef(onNews);
  tell.current = onNews;
  const pass = useRef(onPush);
  pass.current = onPush;

  // A new sign-in opens it anew.
  useEffect(() => {
    let socket: WebSocket;
    let wanted = true;
    let isFirst = true;
    let waitMs = FIRST_TRY_AGAIN_MS;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const heard = (push: LivePush) => {
      if (push.type === 'problem') socket.close();
      if (wanted) pass.current(push);
      if (push.type !== 'status' || !wanted) return;
      setLive(true);
      waitMs = FIRST_TRY_AGAIN_MS;
      tell.current(push.status, isFirst);
      isFirst = false;
    };
    const open = () => {
      socket = new WebSocket(`${location.origin.replace(/^http/, 'ws')}/api/v1/live`);
      socket.onopen = () => {
        pass.current(null);
        socket.send(JSON.stringify({ type: 'watch', roomId }));
      };
      // The service's own schema gives its pushes their shape.
      socket.onmessage = ({ data }) => heard(JSON.parse(data) as LivePush);
      socket.onclose = ({ code }) => {
        if (!wanted) return;
        setLive(false);
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
      setLive(false);
    };
  }, [roomId, epoch]);
  return live;
}
