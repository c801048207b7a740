import { words } from '../../words.ts';
import { Trail } from './Trail.tsx';

interface Named {
  readonly id: string;
  readonly name: string;
}

interface RoomTrailProps {
  /** Null while it is on its way. */
  readonly coach: Named | null;
  readonly room: Named;
}

/** The way to a page that stands below a room. */
export function RoomTrail({ coach, room }: RoomTrailProps) {
  return (
    <Trail
      steps={[
        { href: '/', text: words.nav.coaches },
        ...(coach === null ? [] : [{ href: `/coaches/${coach.id}`, text: coach.name }]),
        { href: `/rooms/${room.id}`, text: room.name },
      ]}
      here=""
    />
  );
}
