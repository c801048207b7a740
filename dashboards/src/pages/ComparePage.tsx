import type { Coach, Room } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { ChooseSpans } from '../compare/ChooseSpans.tsx';
import { ChooseWork } from '../compare/ChooseWork.tsx';
import { questionOf, SPAN_NAMES } from '../compare/question.ts';
import { Sheet } from '../compare/Sheet.tsx';
import { spanProblems } from '../compare/spanProblems.ts';
import { useComparison } from '../compare/useComparison.ts';
import { Loaded, Waiting } from '../components/coming/states.tsx';
import { NotThere } from '../components/frame/NotThere.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { RoomTrail } from '../components/frame/RoomTrail.tsx';
import { fieldToday } from '../fieldTime.ts';
import { useSearch } from '../router.ts';
import { compareWords } from '../words/compare.ts';
import { words } from '../words.ts';

const NOTHING_WRONG: readonly string[] = [];

function SpansWrong({ problems }: { readonly problems: readonly string[] }) {
  return (
    <section class="note" aria-labelledby="wrong">
      <h2 id="wrong">{compareWords.spansWrong}</h2>
      <ul>
        {[...new Set(problems)].map((problem) => (
          <li key={problem}>{problem}</li>
        ))}
      </ul>
    </section>
  );
}

function CompareHere({ room }: { readonly room: Room }) {
  const say = compareWords;
  const question = questionOf(useSearch());
  const wrong =
    question?.kind === 'spans' ? Object.values(spanProblems(question.spans, fieldToday())) : NOTHING_WRONG;
  const asked = wrong.length > 0 ? null : question;
  const coach = useLoad<Coach>(`/coaches/${room.coachId}`);
  const { titles, services, warnings, comparison, isAnsweredLater, isGone } = useComparison(room.id, asked);
  const chosen = question?.kind === 'service' ? question.serviceId : null;
  const service = services.value?.items.find(({ id }) => id === chosen) ?? null;
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
      {wrong.length > 0 && <SpansWrong problems={wrong} />}
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
            {(list) => <ChooseWork services={list} roomId={room.id} chosen={chosen} />}
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
