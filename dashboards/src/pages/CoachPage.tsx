import { oneCoach } from '../api/questions.ts';
import type { CoachOverview, Page } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { CoachHere } from '../coach/CoachHere.tsx';
import { Loaded, Waiting } from '../components/coming/states.tsx';
import { NothingThere, NotThere } from '../components/frame/NotThere.tsx';
import { Trail } from '../components/frame/Trail.tsx';
import { words } from '../words.ts';

const EVERY_MS = 60_000;

/** One coach with its rooms. */
export function CoachPage({ id }: { readonly id: string }) {
  const load = useLoad<Page<CoachOverview>>(oneCoach(id), () => EVERY_MS);
  if (load.value === null)
    return load.problem === null ? (
      <Waiting />
    ) : (
      <NotThere problem={load.problem} retry={load.reload} say={words.coach} />
    );
  return (
    <>
      <Trail steps={[{ href: '/', text: words.nav.coaches }]} here="" />
      <Loaded load={load}>
        {({ items }) =>
          items.length === 0 ? (
            <NothingThere title={words.coach.notFound} />
          ) : (
            <CoachHere coach={items[0]} reload={load.reload} />
          )
        }
      </Loaded>
    </>
  );
}
