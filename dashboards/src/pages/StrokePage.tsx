import { useMemo } from 'preact/hooks';
import * as questions from '../api/questions.ts';
import type { CoachOverview, Direction, Page, Room, Stroke } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { useMany } from '../api/useMany.ts';
import { numberMarks } from '../charts/drawn/marks.ts';
import { Loaded, Waiting } from '../components/coming/states.tsx';
import { NotThere } from '../components/frame/NotThere.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { RoomTrail } from '../components/frame/RoomTrail.tsx';
import { Moment } from '../components/told/Moment.tsx';
import { toldHere } from '../format.ts';
import { Opens } from '../forms/Opens.tsx';
import { useSearch } from '../router.ts';
import { ChooseOverlays } from '../stroke/ChooseOverlays.tsx';
import { CorrectStroke } from '../stroke/CorrectStroke.tsx';
import { Doubts } from '../stroke/Doubts.tsx';
import { MarksTable } from '../stroke/MarksTable.tsx';
import { MeasuresTable } from '../stroke/MeasuresTable.tsx';
import { overlaysOf } from '../stroke/overlayChoice.ts';
import { SetAside } from '../stroke/SetAside.tsx';
import { TimeChart } from '../stroke/TimeChart.tsx';
import { TravelChart } from '../stroke/TravelChart.tsx';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';

const WHILE_PENDING_MS = 1_500;

interface StrokeInRoom {
  readonly stroke: Stroke;
  readonly room: Room;
  /** Null while it is on its way. */
  readonly coach: CoachOverview | null;
  readonly reload: () => void;
}

/** The room's own order of sides first, so that a side looks the same on every page. */
function sidesOf(stroke: Stroke, room: Room): string[] {
  const sent = stroke.sides.map(({ side }) => side);
  const known = room.sides.filter((side) => sent.includes(side));
  return [...known, ...sent.filter((side) => !known.includes(side))];
}

function directionOf({ analysis, direction }: Stroke): Direction | 'unknown' {
  return (analysis?.status === 'done' ? analysis.direction : direction) ?? 'unknown';
}

function StrokeHere({ stroke, room, coach, reload }: StrokeInRoom) {
  const done = stroke.analysis?.status === 'done' ? stroke.analysis : null;
  const direction = directionOf(stroke);
  // Kept while nothing of them changes: a new list would draw the pictures anew.
  const sides = useMemo(() => sidesOf(stroke, room), [stroke, room]);
  const marks = useMemo(() => (done === null ? [] : numberMarks(done, sides)), [done, sides]);
  const chosen = overlaysOf(useSearch()).filter((id) => id !== stroke.id);
  const others = useMany<Stroke>(chosen.map((id) => `/strokes/${encodeURIComponent(id)}`));
  const laid = useMemo(() => others.values, [others.values.map(({ id }) => id).join()]);
  return (
    <>
      {stroke.excluded && <p class="note">{strokeWords.setAside.isAside}</p>}
      {stroke.analysis === null && (
        <p class="note" role="status">
          {strokeWords.pending}
        </p>
      )}
      {stroke.analysis?.status === 'unusable' && (
        <section class="note">
          <h2>{strokeWords.unusable}</h2>
          <p dir="auto">{toldHere(stroke.analysis.reason)}</p>
          <p class="cautions">{strokeWords.unusableBefore}</p>
          <p>{strokeWords.unusableMeans}</p>
        </section>
      )}
      {done !== null && <Doubts doubts={done.doubts} />}
      {done !== null && (
        <TravelChart stroke={stroke} room={room} analysis={done} sides={sides} marks={marks} others={laid} />
      )}
      {done !== null && (
        <ChooseOverlays
          room={room}
          stroke={stroke}
          chosen={chosen}
          problem={others.problem}
          retry={others.reload}
        />
      )}
      <TimeChart stroke={stroke} sides={sides} analysis={done} marks={marks} />
      {done !== null && (
        <div class="beside">
          <MeasuresTable stroke={stroke} analysis={done} sides={sides} />
          <MarksTable marks={marks} travelMetres={room.travelMetres} />
        </div>
      )}
      {coach !== null && coach.role !== 'owner' && (
        <>
          <Opens key={`${stroke.placedAt}/${stroke.roomId}/${direction}`} title={strokeWords.correct.title}>
            <CorrectStroke stroke={stroke} rooms={coach.rooms} onDone={reload} />
          </Opens>
          <SetAside stroke={stroke} onDone={reload} />
        </>
      )}
    </>
  );
}

function StrokeOf({ id }: { readonly id: string }) {
  const stroke = useLoad<Stroke>(`/strokes/${encodeURIComponent(id)}`, (s) =>
    s.analysis === null ? WHILE_PENDING_MS : null,
  );
  const room = useLoad<Room>(stroke.value === null ? null : `/rooms/${stroke.value.roomId}`);
  const coaches = useLoad<Page<CoachOverview>>(
    room.value === null ? null : questions.oneCoach(room.value.coachId),
  );
  const coach = coaches.value?.items[0] ?? null;
  if (stroke.value === null) {
    if (stroke.problem === null) return <Waiting />;
    return <NotThere problem={stroke.problem} retry={stroke.reload} say={strokeWords} />;
  }
  const { placedAt, roomId } = stroke.value;
  const direction = directionOf(stroke.value);
  return (
    <>
      <RoomTrail coach={coach} room={room.value ?? { id: roomId, name: strokeWords.room }} />
      <PageTitle
        text={
          direction === 'unknown' ? strokeWords.directionUnknown : strokeWords.title(words.doing[direction])
        }
      />
      <p class="lead">
        <Moment at={placedAt} />
      </p>
      <Loaded load={room}>
        {(here) => (
          <Loaded load={stroke}>
            {(value) => <StrokeHere stroke={value} room={here} coach={coach} reload={stroke.reload} />}
          </Loaded>
        )}
      </Loaded>
    </>
  );
}

export function StrokePage({ id }: { readonly id: string }) {
  return (
    <div class="fills-screen">
      <StrokeOf id={id} />
    </div>
  );
}
