import { useState } from 'preact/hooks';
import type { Coach, MeasureTitle, Room, RoomStatus } from '../api/types.ts';
import { useLiveRoom } from '../api/useLiveRoom.ts';
import { useLoad } from '../api/useLoad.ts';
import { Moment } from '../components/Moment.tsx';
import { PageTitle } from '../components/PageTitle.tsx';
import { Failure, Loaded, Waiting } from '../components/states.tsx';
import { Trail } from '../components/Trail.tsx';
import { VerdictWord } from '../components/VerdictSign.tsx';
import { ServicesSection } from '../room/ServicesSection.tsx';
import { StrokesSection } from '../room/StrokesSection.tsx';
import { TrendSection } from '../room/TrendSection.tsx';
import { WarningsSection } from '../room/WarningsSection.tsx';
import { words } from '../words.ts';

const WHILE_PENDING_MS = 2_000;
const OTHERWISE_MS = 60_000;

/** The answer: it comes first, and fits the first screen of a phone. */
function Answer({ status }: { readonly status: RoomStatus }) {
  return (
    <section class={`answer answer-${status.verdict}`} aria-label={words.verdicts[status.verdict].word}>
      <p class="answer-word">
        <VerdictWord verdict={status.verdict} />
      </p>
      <p class="answer-headline" dir="auto">
        {status.headline}
      </p>
      <p class="answer-means">{words.verdicts[status.verdict].means}</p>
      <p class="answer-about">
        {words.room.counted(status.strokes)}
        {status.lastStrokeAt !== null && (
          <>
            {', '}
            {words.room.lastStroke} <Moment at={status.lastStrokeAt} ago />
          </>
        )}
        {status.pending > 0 && <span role="status"> · {words.room.pending(status.pending)}</span>}
      </p>
    </section>
  );
}

function RoomHere({ room }: { readonly room: Room }) {
  const live = useLiveRoom(room.id, (news, isFirst) => {
    // The page was asked for a moment ago: mostly it shows this already.
    if (!isFirst || JSON.stringify(news) !== JSON.stringify(status.value)) changed();
  });
  const status = useLoad<RoomStatus>(`/rooms/${room.id}/status`, (s) =>
    live ? null : s.pending > 0 ? WHILE_PENDING_MS : OTHERWISE_MS,
  );
  const coach = useLoad<Coach>(`/coaches/${room.coachId}`);
  const measures = useLoad<readonly MeasureTitle[]>('/measures');
  const [changes, setChanges] = useState(0);
  const changed = () => {
    setChanges((n) => n + 1);
    status.reload();
  };
  const { strokes, pending, openWarnings } = status.value ?? {};
  // What the sections show follows from strokes, warnings and work: they ask anew when these have changed.
  const version = status.value === null ? '' : [strokes, pending, openWarnings, changes].join('/');
  return (
    <>
      <Trail steps={[{ href: '/', text: words.nav.coaches }]} here={coach.value?.name ?? ''} />
      <PageTitle text={room.name} />
      <Loaded load={status}>{(value) => <Answer status={value} />}</Loaded>
      <WarningsSection room={room} version={version} onChange={changed} />
      <Loaded load={measures}>
        {(titles) => <TrendSection room={room} measures={titles} version={version} />}
      </Loaded>
      <div class="beside beside-list">
        <StrokesSection room={room} version={version} />
        <ServicesSection room={room} onChange={changed} />
      </div>
    </>
  );
}

export function RoomPage({ id }: { readonly id: string }) {
  const room = useLoad<Room>(`/rooms/${encodeURIComponent(id)}`);
  if (room.value !== null) return <RoomHere room={room.value} />;
  if (room.problem === null) return <Waiting />;
  return (
    <>
      <PageTitle text={room.problem.status === 404 ? words.room.notFound : words.room.notNow} />
      <Failure problem={room.problem} retry={room.reload} />
    </>
  );
}
