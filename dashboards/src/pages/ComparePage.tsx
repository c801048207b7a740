import { MEASURES } from '../api/questions.ts';
import type { Coach, Comparison, MeasureTitle, Page, Room, Service, Warning } from '../api/types.ts';
import { useLiveRoom } from '../api/useLiveRoom.ts';
import { useLoad } from '../api/useLoad.ts';
import { ChooseSpans } from '../compare/ChooseSpans.tsx';
import { comparisonPath, questionOf, SPAN_NAMES, serviceAddress } from '../compare/question.ts';
import { Sheet } from '../compare/Sheet.tsx';
import { spanProblems } from '../compare/spanProblems.ts';
import { Loaded, Waiting } from '../components/coming/states.tsx';
import { NotThere } from '../components/frame/NotThere.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { RoomTrail } from '../components/frame/RoomTrail.tsx';
import { Moment } from '../components/told/Moment.tsx';
import { fieldToday } from '../fieldTime.ts';
import { useSearch } from '../router.ts';
import { sideName } from '../sideName.ts';
import { compareWords } from '../words/compare.ts';
import { words } from '../words.ts';

const MOST_SERVICES = 500;
const MOST_WARNINGS = 500;
const WITHOUT_FEED_MS = 60_000;
const NOTHING_WRONG: readonly string[] = [];

function Services({ list, roomId, chosen }: { list: Page<Service>; roomId: string; chosen: string | null }) {
  const say = compareWords;
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
  const say = compareWords;
  const question = questionOf(useSearch());
  const wrong =
    question?.kind === 'spans' ? Object.values(spanProblems(question.spans, fieldToday())) : NOTHING_WRONG;
  const asked = wrong.length > 0 ? null : question;
  const coach = useLoad<Coach>(`/coaches/${room.coachId}`);
  const titles = useLoad<readonly MeasureTitle[]>(MEASURES);
  const services = useLoad<Page<Service>>(`/rooms/${room.id}/services?limit=${MOST_SERVICES}`);
  const live = useLiveRoom(room.id, (_, isFirst) => {
    if (isFirst) return;
    comparison.reload();
    warnings.reload();
  });
  const comparison = useLoad<Comparison>(asked === null ? null : comparisonPath(room.id, asked), () =>
    live ? null : WITHOUT_FEED_MS,
  );
  const warnings = useLoad<Page<Warning>>(
    asked?.kind === 'service' ? `/rooms/${room.id}/warnings?limit=${MOST_WARNINGS}` : null,
  );
  const chosen = question?.kind === 'service' ? question.serviceId : null;
  const service = services.value?.items.find(({ id }) => id === chosen) ?? null;
  // The sentence that stands first says what was done, and what became of its warning.
  const isAnsweredLater =
    asked?.kind === 'service' &&
    [services, warnings].some((load) => load.value === null && load.problem === null);
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
      {wrong.length > 0 && (
        <section class="note" aria-labelledby="wrong">
          <h2 id="wrong">{say.spansWrong}</h2>
          <ul>
            {[...new Set(wrong)].map((problem) => (
              <li key={problem}>{problem}</li>
            ))}
          </ul>
        </section>
      )}
      {asked === null || isGone ? (
        <p class="lead">{say.choose}</p>
      ) : isAnsweredLater ? (
        <Waiting />
      ) : (
        <Loaded load={titles}>
          {(known) => (
            <Loaded load={comparison}>
              {(value) => (
                <Sheet
                  coach={coach.value}
                  room={room}
                  service={service}
                  warnings={warnings.value?.items ?? null}
                  question={asked}
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
          <ChooseSpans
            key={question?.kind === 'spans' ? SPAN_NAMES.map((name) => question.spans[name]).join() : ''}
            roomId={room.id}
            given={question?.kind === 'spans' ? question.spans : null}
          />
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
  return <NotThere problem={room.problem} retry={room.reload} say={words.room} />;
}
