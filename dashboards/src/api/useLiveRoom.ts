import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { SessionContext } from '../session.ts';
import { openLiveFeed } from './liveFeed.ts';
import type { LivePush, RoomStatus } from './types.ts';
import { useNotTooOften } from './useNotTooOften.ts';

/**
 * Watches a room and calls `onNews` with its status whenever its results were written anew, and once at each
 * beginning (`isFirst`: the very first). `onPush` hears all that is pushed, and null whenever the feed begins. Answers
 * whether the feed is open: while it is not, the page must ask.
 */
export function useLiveRoom(
  roomId: string,
  onNews: (status: RoomStatus, isFirst: boolean) => void,
  onPush: (push: LivePush | null) => void = () => {},
): boolean {
  const { epoch } = useContext(SessionContext);
  const [live, setLive] = useState(false);
  const tell = useNotTooOften(onNews);
  const pass = useRef(onPush);
  pass.current = onPush;

  // A new sign-in opens it anew.
  useEffect(() => {
    let isFirst = true;
    return openLiveFeed({
      roomIds: [roomId],
      onLive: setLive,
      onBegin: () => pass.current(null),
      onPush: (push) => {
        pass.current(push);
        if (push.type !== 'status') return;
        tell(push.status, isFirst);
        isFirst = false;
      },
    });
  }, [roomId, epoch, tell]);
  return live;
}
