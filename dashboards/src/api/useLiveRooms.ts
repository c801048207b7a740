import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { SessionContext } from '../session.ts';
import { MOST_WATCHED, openLiveFeed } from './liveFeed.ts';
import type { RoomStatus } from './types.ts';
import { useNotTooOften } from './useNotTooOften.ts';

/** As a status reads that was shown already: what is pushed at the beginning is mostly known. */
const textOf = ({ verdict, headline, strokes, openWarnings, lastStrokeAt, pending }: RoomStatus): string =>
  JSON.stringify([verdict, headline, strokes, openWarnings, lastStrokeAt, pending]);

/**
 * Watches rooms (the first fifty) and calls `onNews` when one of them stands otherwise than it was shown. Answers
 * whether the feed is open: while it is not, the page must ask. More rooms after those change nothing: a list that
 * grows at its end keeps its feed.
 */
export function useLiveRooms(
  rooms: readonly (RoomStatus & { readonly id: string })[],
  onNews: () => void,
): boolean {
  const { epoch } = useContext(SessionContext);
  const [live, setLive] = useState(false);
  const first = rooms.slice(0, MOST_WATCHED);
  const shown = useRef(first);
  shown.current = first;
  const tell = useNotTooOften(onNews);
  const watched = first.map((room) => room.id).join(' ');

  // A new sign-in opens it anew.
  useEffect(() => {
    if (watched === '') return;
    return openLiveFeed({
      roomIds: watched.split(' '),
      onLive: setLive,
      onPush: (push) => {
        if (push.type !== 'status') return;
        const room = shown.current.find(({ id }) => id === push.roomId);
        if (room === undefined || textOf(room) !== textOf(push.status)) tell();
      },
    });
  }, [watched, epoch, tell]);
  return live;
}
