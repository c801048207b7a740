import { useCallback, useMemo } from 'preact/hooks';
import { More } from '../components/coming/More.tsx';
import { Failure, Loaded } from '../components/coming/states.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { replaceAddress, useSearch } from '../router.ts';
import { words } from '../words.ts';
import { Changes } from './Changes.tsx';
import { Chosen } from './Chosen.tsx';
import { CoachRow } from './CoachRow.tsx';
import { Filters } from './Filters.tsx';
import { ListHead } from './ListHead.tsx';
import { type LotQuestion, lotAddress, lotPath, lotQuestionOf } from './question.ts';
import { useChosen } from './useChosen.ts';
import { useEndInSight } from './useEndInSight.ts';
import { useGradually } from './useGradually.ts';
import { useLot } from './useLot.ts';

const COACHES_AT_ONCE = 25;
/** So many coaches an owner takes in without any help. */
const FEW = 10;

interface LotProps {
  readonly since: string | null;
  /** Of an owner, or where there is one coach alone: without what a dealer needs among hundreds, while they are few. */
  readonly looksAtFew: boolean;
}

/** The whole lot: in order of concern unless asked otherwise, with what changed since the last visit. */
export function Lot({ since, looksAtFew }: LotProps) {
  const say = words.lot;
  const search = useSearch();
  const question = useMemo(() => lotQuestionOf(search), [search]);
  const path = lotPath(question, since);
  const { summary, list, reload } = useLot(path, since, COACHES_AT_ONCE);
  const drawn = useGradually(list.items, COACHES_AT_ONCE);
  const { chosen, choose, chooseOnly } = useChosen();
  const saving = useSending();
  const ask = useCallback((asked: LotQuestion) => replaceAddress(lotAddress(asked)), []);
  // With as many names to choose from as the lot has: they stand still while coaches are chosen.
  const filters = useMemo(
    () => (
      <Filters question={question} summary={summary.value} mayAskChanged={since !== null} onChange={ask} />
    ),
    [question, summary.value, since, ask],
  );
  const isPlain =
    looksAtFew && lotAddress(question) === '/' && (summary.value === null || summary.value.coaches <= FEW);
  const end = useEndInSight(() => {
    if (list.moreProblem === null && drawn.length === list.items.length) void list.loadMore();
  });
  return (
    <>
      {(summary.value !== null || summary.problem === null) && (
        <Changes summary={summary.value} since={since} />
      )}
      {!isPlain && filters}
      <Loaded load={list.first}>
        {() =>
          list.items.length === 0 ? (
            <section class="empty">
              <h2>{say.none}</h2>
              <p>{say.noneHint}</p>
            </section>
          ) : (
            <>
              {!isPlain && (
                <ListHead
                  shown={list.items.length}
                  hasMore={list.hasMore}
                  path={path}
                  saving={saving}
                  onChooseAll={() => chooseOnly(list.items.map((coach) => coach.id))}
                />
              )}
              {saving.problem !== null && <Failure problem={saving.problem} />}
              {chosen.size > 0 && (
                <Chosen
                  coachIds={[...chosen]}
                  since={since}
                  onNone={() => chooseOnly([])}
                  onChange={reload}
                />
              )}
              <ul class="coaches" aria-label={say.listOf}>
                {drawn.map((coach) => (
                  <CoachRow
                    key={coach.id}
                    coach={coach}
                    isNew={since !== null && coach.createdAt > since}
                    chosen={chosen.has(coach.id)}
                    onChoose={isPlain ? null : choose}
                  />
                ))}
              </ul>
              <div ref={end} />
              <More list={list} />
            </>
          )
        }
      </Loaded>
    </>
  );
}
