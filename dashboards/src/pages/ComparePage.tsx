import { MEASURES } from '../api/questions.ts';
import type { Coach, Comparison, MeasureTitle, Page, Room, Service } from '../api/types.ts';
import { useLiveRoom } from '../api/useLiveRoom.ts';
import { useLoad } from '../api/useLoad.ts';
import { ChooseSpans } from '../compare/ChooseSpans.tsx';
import { comparisonPath, questionOf, serviceAddress } from '../compare/question.ts';
import { Sheet } from '../compare/Sheet.tsx';
import { Moment } from '../components/Moment.tsx';
import { PageTitle } from '../components/PageTitle.tsx';
import { RoomTrail } from '../components/RoomTrail.tsx';
import { Failure, Loaded, Waiting } from '../components/states.tsx';
import { useSearch } from '../router.ts';
import { sideName } from '../sideName.ts';
import { words } from '../words.ts';

const MOST_SERVICES = 500;
const WITHOUT_FEED_MS = 60_000;

function Services({ list, roomId, chosen }: { list: Page<Service>; roomId: string; chosen: string | null }) {
  const say = words.compare;
  if (list.items.length === 0) return <p class="about">{words.services.empty}</p>;
  return (
    <ul class="works">
      {list.items.map((service) => (
        <li key={service.id}>
          <a
            href={serviceAddress(roomId, service.id)}
            aria-current={service.id === chosen ? 'page' : undefined}
            dir="auto"
          >
            {words.services.kinds[service.kind]}
            {service.side !== null && `, ${sideName(service.side)}`}
          </a>{' '}
          <span class="about">
            <Moment at={service.at} />
            {service.id === chosen && `${words.joint}${say.shown}`}
          </span>
        </li>
      ))}
    </ul>
  );
}

function CompareHere({ room }: { readonly room: Room }) {
  const say = words.compare;
  const question = questionOf(useSearch());
  const coach = useLoad<Coach>(`/coaches/${room.coachId}`);
  const titles = useLoad<readonly MeasureTitle[]>(MEASURES);
  const services = useLoad<Page<Service>>(`/rooms/${room.id}/services?limit=${MOST_SERVICES}`);
  const live = useLiveRoom(room.id, (_, isFirst) => {
    if (!isFirst) comparison.reload();
  });
  const comparison = useLoad<Comparison>(question === null ? null : comparisonPath(room.id, question), () =>
    live ? null : WITHOUT_FEED_MS,
  );
  const chosen = question?.kind === 'service' ? question.serviceId : null;
  const service = services.value?.items.find(({ id }) => id === chosen) ?? null;
  // Its link may be older than its deletion.
  const isGone = comparison.problem?.fields.some(({ pointer }) => pointer === '/service') === true;
  return (
    <>
      <RoomTrail coach={coach.value} room={room} />
      <div class="title-line">
        <PageTitle text={say.title} />
        {comparison.value !== null && !isGone && (
          <button type="button" class="no-print" onClick={() => window.print()}>
            {say.print}
          </button>
        )}
      </div>
      {isGone && (
        <p class="note" role="status">
          {say.workGone}
        </p>
      )}
      {question === null || isGone ? (
        <p class="lead">{say.choose}</p>
      ) : (
        <Loaded load={titles}>
          {(known) => (
            <Loaded load={comparison}>
              {(value) => (
                <Sheet
                  coach={coach.value}
                  room={room}
                  service={service}
                  question={question}
                  comparison={value}
                  titles={known}
                />
              )}
            </Loaded>
          )}
        </Loaded>
      )}
      <div class="beside no-print">
        <section aria-labelledby="by-work">
          <h2 id="by-work">{say.byWork}</h2>
          <Loaded load={services}>
            {(list) => <Services list={list} roomId={room.id} chosen={chosen} />}
          </Loaded>
        </section>
        <section aria-labelledby="by-spans">
          <h2 id="by-spans">{say.bySpans}</h2>
          <ChooseSpans roomId={room.id} given={question?.kind === 'spans' ? question.spans : null} />
        </section>
      </div>
    </>
  );
}

/** What a repair changed: before against after, around a work done or between two spans of days. */
export function ComparePage({ id }: { readonly id: string }) {
  const room = useLoad<Room>(`/rooms/${encodeURIComponent(id)}`);
  if (room.value !== null) return <CompareHere room={room.value} />;
  if (room.problem === null) return <Waiting />;
  return (
    <>
      <PageTitle text={room.problem.status === 404 ? words.room.notFound : words.room.notNow} />
      <Failure problem={room.problem} retry={room.reload} />
    </>
  );
}
