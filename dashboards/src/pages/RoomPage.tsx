import { useState } from 'preact/hooks';
import * as questions from '../api/questions.ts';
import type { CoachOverview, MeasureTitle, Page, Room, RoomStatus } from '../api/types.ts';
import { useLiveRoom } from '../api/useLiveRoom.ts';
import { useLoad } from '../api/useLoad.ts';
import { Later } from '../components/coming/Later.tsx';
import { lazily } from '../components/coming/Lazily.tsx';
import { Loaded, Waiting } from '../components/coming/states.tsx';
import { NotThere } from '../components/frame/NotThere.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { Trail } from '../components/frame/Trail.tsx';
import { useRunningStrokes } from '../live/useRunningStrokes.ts';
import { RoomAnswer } from '../room/RoomAnswer.tsx';
import { StrokesSection } from '../room/StrokesSection.tsx';
import { TrendSection } from '../room/trend/TrendSection.tsx';
import { CHECKS } from '../room/warnings/Advice.tsx';
import { WarningsSection } from '../room/warnings/WarningsSection.tsx';
import { ServicesSection, WORK } from '../room/work/ServicesSection.tsx';
import { words } from '../words.ts';

const RoomTools = lazily(async () => (await import('../room/RoomTools.tsx')).RoomTools);
const LiveSection = lazily(async () => (await import('../live/LiveSection.tsx')).LiveSection);
const WHILE_PENDING_MS = 2_000;
const OTHERWISE_MS = 60_000;

function Trends({ room, version }: { readonly room: Room; readonly version: string }) {
  const measures = useLoad<readonly MeasureTitle[]>(questions.MEASURES);
  return (
    <Loaded load={measures}>
      {(titles) => <TrendSection room={room} measures={titles} version={version} />}
    </Loaded>
  );
}

interface RoomHereProps {
  readonly room: Room;
  readonly reload: () => void;
}

function RoomHere({ room, reload }: RoomHereProps) {
  const [{ running, finished }, hear] = useRunningStrokes();
  const news = (said: RoomStatus, isFirst: boolean) => {
    // The page was asked for a moment ago: mostly it shows this already.
    if (!isFirst || JSON.stringify(said) !== JSON.stringify(status.value)) changed();
  };
  const live = useLiveRoom(room.id, news, hear);
  const status = useLoad<RoomStatus>(questions.roomStatus(room.id), (s) =>
    live ? null : s.pending > 0 ? WHILE_PENDING_MS : OTHERWISE_MS,
  );
  const coaches = useLoad<Page<CoachOverview>>(questions.oneCoach(room.coachId));
  const coach = coaches.value?.items[0];
  const [changes, setChanges] = useState(0);
  const changed = () => {
    setChanges((n) => n + 1);
    status.reload();
  };
  const { strokes, pending, openWarnings } = status.value ?? {};
  // What the sections show follows from strokes, warnings and work: they ask anew when these have changed.
  const version = status.value === null ? '' : [strokes, pending, openWarnings, changes].join('/');
  return (
    <div class="fills-screen">
      <Trail
        steps={[
          { href: '/', text: words.nav.coaches },
          ...(coach === undefined ? [] : [{ href: `/coaches/${coach.id}`, text: coach.name }]),
        ]}
        here=""
      />
      <PageTitle text={room.name} />
      <Loaded load={status}>
        {(value) => <RoomAnswer status={value} checksAt={`#${CHECKS}`} workAt={`#${WORK}`} />}
      </Loaded>
      {(running.length > 0 || finished !== null) && (
        <div class="live">
          <LiveSection room={room} running={running} finished={finished} live={live} />
        </div>
      )}
      <WarningsSection room={room} version={version} onChange={changed} />
      <Later>
        <ServicesSection room={room} version={version} onChange={changed} />
        <div class="trend-place">
          <Trends room={room} version={version} />
        </div>
        <StrokesSection room={room} version={version} />
        {coach !== undefined && coach.role !== 'owner' && <RoomTools room={room} onChange={reload} />}
      </Later>
    </div>
  );
}

export function RoomPage({ id }: { readonly id: string }) {
  const room = useLoad<Room>(questions.room(id));
  if (room.value !== null) return <RoomHere room={room.value} reload={room.reload} />;
  if (room.problem === null) return <Waiting />;
  return <NotThere problem={room.problem} retry={room.reload} say={words.room} />;
}
