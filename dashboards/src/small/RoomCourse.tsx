import type { OverviewRoom, Trend } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { useRefresh } from '../api/useRefresh.ts';
import { LineKey, WorkKey } from '../charts/drawn/keys.tsx';
import { Loaded } from '../components/coming/states.tsx';
import { isTrouble } from '../concern.ts';
import { sideName } from '../sideName.ts';
import { words } from '../words.ts';
import { bandOf, courseBegin, courseEnds, courseOf, drawnValues, type SideCourse } from './course.ts';
import { courseSentence } from './courseSentence.ts';
import { SmallChart } from './SmallChart.tsx';
import { scaleOf, scaleOfParts } from './smallScale.ts';

/** More lines than these nobody can tell apart on a phone; the room's own page has them all. */
const MOST_SIDES = 2;

/** Amperes and parts of a normal have no scale in common: a side without a normal waits until it has one, too. */
function onOneScale(courses: readonly SideCourse[]): readonly SideCourse[] {
  const seen = courses.filter((course) => course.line.points.length > 0);
  const parts = seen.filter((course) => course.isParts);
  return parts.length === 0 ? seen : parts;
}

function Picture({ room, trends }: { readonly room: OverviewRoom; readonly trends: readonly Trend[] }) {
  const sides = room.sides.slice(0, MOST_SIDES);
  const courses = sides.map((side, i) => courseOf(trends[i], side, i, true));
  const ofRoom = { only: room.sides.length === 1, inTrouble: isTrouble(room.verdict) };
  const sentences = courses.map((course) => courseSentence(course, ofRoom));
  const summary = [...sentences, ...(ofRoom.inTrouble ? [words.course.stands] : [])].join(' ');
  const work = courses[0]?.work ?? [];
  const shown = onOneScale(courses);
  const lines = shown.map((course) => course.line);
  const band = bandOf(shown);
  const values = drawnValues(lines, band);
  if (courses.every((course) => course.line.points.length === 0))
    return <p class="about">{words.trend.empty}</p>;
  return (
    <>
      <p>{summary}</p>
      {shown.some((course) => course.line.points.length > 1) && (
        <>
          <SmallChart
            lines={lines}
            band={band}
            uprights={work}
            scale={shown[0]?.isParts ? scaleOfParts(values, words.normal) : scaleOf(values, 'A')}
            ends={courseEnds(trends.find(({ points }) => points.length > 0)?.points ?? [])}
            label={words.course.label(summary)}
          />
          <ul class="keys" aria-label={words.keys}>
            {sides.length > 1 &&
              sides.map((side, i) =>
                !shown.includes(courses[i]) ? null : <LineKey key={side} text={sideName(side)} side={i} />,
              )}
            {work.length > 0 && <WorkKey text={words.trend.service} />}
          </ul>
        </>
      )}
    </>
  );
}

interface RoomCourseProps {
  readonly room: OverviewRoom;
}

/** How a room's running current went lately, side by side, as parts of its own normal. */
export function RoomCourse({ room }: RoomCourseProps) {
  const { id, name, strokes, pending, lastStrokeAt } = room;
  return (
    <section class="course" aria-labelledby={`course-${id}`}>
      <h3 id={`course-${id}`} dir="auto">
        {name}
      </h3>
      {lastStrokeAt === null ? (
        <p class="about">{words.strokes.empty}</p>
      ) : (
        <Sides room={room} from={courseBegin(lastStrokeAt)} version={`${strokes}/${pending}`} />
      )}
    </section>
  );
}

interface SidesProps {
  readonly room: OverviewRoom;
  readonly from: string;
  readonly version: string;
}

function Sides({ room, from, version }: SidesProps) {
  const pathOf = (side: string | undefined) =>
    side === undefined
      ? null
      : `/rooms/${room.id}/trend?${new URLSearchParams({ measure: 'runningAmps', direction: 'extend', side, from })}`;
  const first = useLoad<Trend>(pathOf(room.sides[0]));
  const second = useLoad<Trend>(pathOf(room.sides[1]));
  useRefresh(version, first.reload);
  useRefresh(version, second.reload);
  const waits = room.sides.length > 1 && second.value === null;
  return (
    <Loaded load={waits ? second : first}>
      {() =>
        first.value === null ? null : (
          <Picture room={room} trends={[first.value, ...(second.value === null ? [] : [second.value])]} />
        )
      }
    </Loaded>
  );
}
