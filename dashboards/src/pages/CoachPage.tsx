import { oneCoach } from '../api/questions.ts';
import type { CoachOverview, Page } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { CoachHere } from '../coach/CoachHere.tsx';
import { PageTitle } from '../components/PageTitle.tsx';
import { Failure, Loaded, Waiting } from '../components/states.tsx';
import { Trail } from '../components/Trail.tsx';
import { words } from '../words.ts';

const EVERY_MS = 60_000;

/** One coach with its rooms. */
export function CoachPage({ id }: { readonly id: string }) {
  const load = useLoad<Page<CoachOverview>>(oneCoach(id), () => EVERY_MS);
  if (load.value === null && load.problem === null) return <Waiting />;
  if (load.value === null) {
    // An id that cannot be one is refused; for the reader there is no such coach.
    const isMissing = load.problem?.status === 404 || load.problem?.status === 422;
    return (
      <>
        <PageTitle text={isMissing ? words.coach.notFound : words.coach.notNow} />
        {load.problem !== null && !isMissing && <Failure problem={load.problem} retry={load.reload} />}
        {isMissing && <p class="failure">{words.problems.notFound}</p>}
      </>
    );
  }
  return (
    <>
      <Trail steps={[{ href: '/', text: words.nav.coaches }]} here="" />
      <Loaded load={load}>
        {({ items }) =>
          items.length === 0 ? (
            <>
              <PageTitle text={words.coach.notFound} />
              <p class="failure">{words.problems.notFound}</p>
            </>
          ) : (
            <CoachHere coach={items[0]} reload={load.reload} />
          )
        }
      </Loaded>
    </>
  );
}
