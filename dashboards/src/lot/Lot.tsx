import { useCallback, useMemo, useState } from 'preact/hooks';
import type { CoachOverview, OverviewSummary } from '../api/types.ts';
import { useEvery } from '../api/useEvery.ts';
import { useLiveRooms } from '../api/useLiveRooms.ts';
import { useLoad } from '../api/useLoad.ts';
import { usePages } from '../api/usePages.ts';
import { useRefresh } from '../api/useRefresh.ts';
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
import { useEndInSight } from './useEndInSight.ts';
import { useGradually } from './useGradually.ts';

const COACHES_AT_ONCE = 25;
const EVERY_MS = 60_000;
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
  const summary = useLoad<OverviewSummary>(
    since === null ? '/overview/summary' : `/overview/summary?since=${encodeURIComponent(since)}`,
    () => EVERY_MS,
  );
  const list = usePages<CoachOverview>(path, COACHES_AT_ONCE);
  const drawn = useGradually(list.items, COACHES_AT_ONCE);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const saving = useSending();
  const reload = () => {
    list.first.reload();
    summary.reload();
  };
  const live = useLiveRooms(
    list.items.flatMap((coach) => coach.rooms),
    reload,
  );
  // The feed tells of the first rooms alone; of all others, and of coaches that were added, the numbers do.
  useEvery(live ? null : EVERY_MS, list.first.reload);
  useRefresh(summary.value === null ? '' : JSON.stringify(summary.value), list.first.reload);
  const ask = useCallback((asked: LotQuestion) => replaceAddress(lotAddress(asked)), []);
  // With as many names to choose from as the lot has: they stand still while coaches are chosen.
  const filters = useMemo(
    () => (
      <Filters question={question} summary={summary.value} mayAskChanged={since !== null} onChange={ask} />
    ),
    [question, summary.value, since, ask],
  );
  const choose = useCallback((id: string, isChosen: boolean) => {
    setChosen((held) => {
      const next = new Set(held);
      if (isChosen) next.add(id);
      else next.delete(id);
      return next;
    });
  }, []);
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
                  onChooseAll={() => setChosen(new Set(list.items.map((coach) => coach.id)))}
                />
              )}
              {saving.problem !== null && <Failure problem={saving.problem} />}
              {chosen.size > 0 && (
                <Chosen
                  coachIds={[...chosen]}
                  since={since}
                  onNone={() => setChosen(new Set())}
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
