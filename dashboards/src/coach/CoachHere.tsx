import { useState } from 'preact/hooks';
import type { CoachOverview } from '../api/types.ts';
import { useLiveRooms } from '../api/useLiveRooms.ts';
import { lazily } from '../components/coming/Lazily.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { byConcern } from '../concern.ts';
import { RoomAnswer } from '../room/RoomAnswer.tsx';
import { CHECKS } from '../room/warnings/Advice.tsx';
import { RoomCourse } from '../small/RoomCourse.tsx';
import { words } from '../words.ts';
import { FirstSteps } from './FirstSteps.tsx';
import { Loggers } from './Loggers.tsx';
import { SeeAll } from './SeeAll.tsx';

const CoachTools = lazily(async () => (await import('./CoachTools.tsx')).CoachTools);
const CoachSight = lazily(async () => (await import('../people/CoachSight.tsx')).CoachSight);

interface CoachHereProps {
  readonly coach: CoachOverview;
  readonly reload: () => void;
}

/** What stands for one coach: its rooms' answers first, then their course, then who reports them. */
export function CoachHere({ coach, reload }: CoachHereProps) {
  useLiveRooms(coach.rooms, reload);
  const about = [coach.model, coach.year].filter((part) => part !== null).join(words.joint);
  const rooms = byConcern(coach.rooms);
  const mayChange = coach.role !== 'owner';
  const [askedRoom, setAskedRoom] = useState(0);
  const [askedLogger, setAskedLogger] = useState(0);
  return (
    <>
      <PageTitle text={coach.name} />
      {about !== '' && (
        <p class="about" dir="auto">
          {about}
        </p>
      )}
      <FirstSteps
        coach={coach}
        mayChange={mayChange}
        addRoom={() => setAskedRoom((times) => times + 1)}
        addLogger={() => setAskedLogger((times) => times + 1)}
      />
      {rooms.length > 0 && (
        <>
          <div class="answers">
            {rooms.map((room) => (
              <RoomAnswer
                key={room.id}
                status={room}
                checksAt={`/rooms/${room.id}#${CHECKS}`}
                heading={
                  <h2 class="answer-room">
                    <a href={`/rooms/${room.id}`} dir="auto">
                      {room.name}
                    </a>
                  </h2>
                }
              />
            ))}
          </div>
          <SeeAll coach={coach} onDone={reload} />
          <section aria-labelledby="courses">
            <h2 id="courses">{words.course.title}</h2>
            <p class="about">{words.course.lead}</p>
            <div class="courses">
              {rooms.map((room) => (
                <RoomCourse key={room.id} room={room} />
              ))}
            </div>
          </section>
        </>
      )}
      <Loggers coach={coach} mayChange={mayChange} asked={askedLogger} onChange={reload} />
      {coach.role === 'owner' && <p class="about">{words.coach.shareOwner}</p>}
      {coach.role === 'dealer' && <CoachSight coachId={coach.id} />}
      {mayChange && <CoachTools coach={coach} asked={askedRoom} onChange={reload} />}
    </>
  );
}
