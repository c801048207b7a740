import type { CoachOverview, OverviewRoom } from '../api/types.ts';
import { usePages } from '../api/usePages.ts';
import { Moment } from '../components/Moment.tsx';
import { More } from '../components/More.tsx';
import { PageTitle } from '../components/PageTitle.tsx';
import { Loaded } from '../components/states.tsx';
import { VerdictWord } from '../components/VerdictSign.tsx';
import { asksForWork, byConcern } from '../concern.ts';
import { words } from '../words.ts';

const COACHES_AT_ONCE = 100;

function RoomLine({ room }: { readonly room: OverviewRoom }) {
  return (
    <li class={`room-line room-line-${room.verdict}`}>
      <a href={`/rooms/${room.id}`}>
        <span class="room-name" dir="auto">
          {room.name}
        </span>
        <VerdictWord verdict={room.verdict} />
        <span class="room-headline" dir="auto">
          {room.headline}
        </span>
        <span class="room-last">
          {room.lastStrokeAt === null ? (
            words.coaches.noStroke
          ) : (
            <>
              {words.coaches.lastStroke} <Moment at={room.lastStrokeAt} ago />
            </>
          )}
        </span>
      </a>
    </li>
  );
}

function CoachBlock({ coach }: { readonly coach: CoachOverview }) {
  const about = [coach.model, coach.year].filter((part) => part !== null).join(' · ');
  return (
    <section class="coach" aria-labelledby={`coach-${coach.id}`}>
      <h2 id={`coach-${coach.id}`} dir="auto">
        {coach.name}
      </h2>
      {about !== '' && (
        <p class="about" dir="auto">
          {about}
        </p>
      )}
      {coach.rooms.length === 0 ? (
        <p class="about">{words.coaches.noRooms}</p>
      ) : (
        <ul class="wall">
          {byConcern(coach.rooms).map((room) => (
            <RoomLine key={room.id} room={room} />
          ))}
        </ul>
      )}
    </section>
  );
}

export function CoachesPage() {
  const list = usePages<CoachOverview>('/overview', COACHES_AT_ONCE);
  const need = list.items.flatMap((coach) => coach.rooms).filter(asksForWork).length;
  return (
    <>
      <PageTitle text={words.coaches.title} />
      <Loaded load={list.first}>
        {() =>
          list.items.length === 0 ? (
            <section class="empty">
              <h2>{words.coaches.empty}</h2>
              <p>{words.coaches.emptyHint}</p>
            </section>
          ) : (
            <>
              <p class="lead">
                {words.coaches.tally(list.items.length, need)} {words.coaches.order}
              </p>
              <div class="coaches">
                {list.items.map((coach) => (
                  <CoachBlock key={coach.id} coach={coach} />
                ))}
              </div>
              <More list={list} />
            </>
          )
        }
      </Loaded>
    </>
  );
}
