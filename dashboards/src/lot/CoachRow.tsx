import { useContext, useMemo } from 'preact/hooks';
import type { CoachOverview, OverviewRoom } from '../api/types.ts';
import { Moment } from '../components/told/Moment.tsx';
import { VerdictWord } from '../components/told/VerdictSign.tsx';
import { byConcern, isTrouble } from '../concern.ts';
import { percent, toldHere } from '../format.ts';
import { SessionContext } from '../session.ts';
import { words } from '../words.ts';

/** What of a room catches the eye beside its verdict. */
function remarksOf(room: OverviewRoom): string[] {
  const say = words.lot;
  const found: string[] = [];
  if (room.verdictBefore !== null) found.push(say.was(words.verdicts[room.verdictBefore].word));
  if (room.openWarnings > 0) found.push(words.coaches.openWarnings(room.openWarnings));
  else if (isTrouble(room.verdict)) found.push(say.seenAndThere);
  // Of one that is still learning, what it will borrow says nothing yet.
  if (room.borrowed !== null && room.verdict !== 'learning')
    found.push(say.borrowed(percent(room.borrowed.share)));
  return found;
}

function RoomLine({ room }: { readonly room: OverviewRoom }) {
  const calm = room.verdict === 'clear' || room.verdict === 'learning';
  const remarks = remarksOf(room);
  return (
    <li class={`room-line room-line-${room.verdict}`}>
      <a href={`/rooms/${room.id}`}>
        <span class="room-name" dir="auto">
          {room.name}
        </span>
        <VerdictWord verdict={room.verdict} />
        {!calm && (
          <span class="room-headline" dir="auto">
            {toldHere(room.headline)}
          </span>
        )}
        <span class="room-last">
          {room.lastStrokeAt === null ? (
            words.coaches.noStroke
          ) : (
            <>
              {words.coaches.lastStroke} <Moment at={room.lastStrokeAt} ago />
            </>
          )}
          {remarks.length > 0 && (
            <>
              {words.joint}
              <strong>{remarks.join(words.joint)}</strong>
            </>
          )}
        </span>
      </a>
    </li>
  );
}

/** When the coach was last heard, and whether one of its loggers is silent. */
function Heard({ coach }: { readonly coach: CoachOverview }) {
  const say = words.lot;
  if (coach.loggers.length === 0) return <>{say.noLogger}</>;
  const silent = coach.loggers.some((logger) => logger.silent);
  return (
    <>
      {coach.lastHeardAt === null ? (
        say.neverHeard
      ) : (
        <>
          {say.heard} <Moment at={coach.lastHeardAt} ago />
        </>
      )}
      {silent && <strong class="silent">{` · ${say.silentFor}`}</strong>}
    </>
  );
}

interface CoachRowProps {
  readonly coach: CoachOverview;
  readonly isNew: boolean;
  readonly chosen: boolean;
  /** null: nobody chooses among so few. Stays the same function from one drawing to the next. */
  readonly onChoose: ((id: string, chosen: boolean) => void) | null;
}

/** As it was drawn before where nothing of it, nor how the person reads, changed: hundreds stand still while the list grows at its end. */
export function CoachRow({ coach, isNew, chosen, onChoose }: CoachRowProps) {
  const { settings } = useContext(SessionContext);
  return useMemo(
    () => <CoachWall coach={coach} isNew={isNew} chosen={chosen} onChoose={onChoose} />,
    [coach, isNew, chosen, onChoose, settings],
  );
}

function About({ coach, isNew }: Pick<CoachRowProps, 'coach' | 'isNew'>) {
  const about = [coach.model, coach.year].filter((part) => part !== null).join(words.joint);
  return (
    <>
      <h2>
        <a href={`/coaches/${coach.id}`} dir="auto">
          {coach.name}
        </a>
      </h2>
      <p class="about">
        {about !== '' && (
          <>
            <bdi>{about}</bdi>
            {words.joint}
          </>
        )}
        <Heard coach={coach} />
        {isNew && <strong>{` · ${words.lot.isNew}`}</strong>}
      </p>
    </>
  );
}

function Rooms({ coach }: Pick<CoachRowProps, 'coach'>) {
  if (coach.rooms.length === 0) return <p class="about">{words.coaches.noRooms}</p>;
  return (
    <ul class="wall">
      {byConcern(coach.rooms).map((room) => (
        <RoomLine key={room.id} room={room} />
      ))}
    </ul>
  );
}

/** One coach: a wall, from which its rooms stand out, the most worrying first. Only its tick changes when it is chosen. */
function CoachWall({ coach, isNew, chosen, onChoose }: CoachRowProps) {
  const { settings } = useContext(SessionContext);
  const about = useMemo(() => <About coach={coach} isNew={isNew} />, [coach, isNew, settings]);
  const rooms = useMemo(() => <Rooms coach={coach} />, [coach, settings]);
  return (
    <li class="coach">
      <div class="coach-head">
        {onChoose !== null && (
          <input
            type="checkbox"
            class="choose"
            aria-label={words.lot.select(coach.name)}
            checked={chosen}
            onChange={(event) => onChoose(coach.id, event.currentTarget.checked)}
          />
        )}
        {about}
      </div>
      {rooms}
    </li>
  );
}
