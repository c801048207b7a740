import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { SessionContext } from '../session.ts';
import { asProblem, type CallProblem, call, untilSessionChanges } from './client.ts';
import { keepAnswer, keptAnswer } from './keptAnswers.ts';
import { type Known, knownAnswer, learnAnswer } from './knownAnswers.ts';

/** A network so slow that what the device has kept is shown in the meantime. */
const SLOW_AFTER_MS = 300;
/** Where the page itself took longer, that is known already. */
const SLOW_PAGE_MS = 600;

function slowAfterMs(): number {
  // Of this type there is the visit's own entry alone.
  const [visit] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
  return visit !== undefined && visit.responseStart > SLOW_PAGE_MS ? 0 : SLOW_AFTER_MS;
}

/** What has come of one question. */
export interface HeldAnswer {
  readonly path: string;
  readonly known: Known | null;
  readonly problem: CallProblem | null;
  /** From the device: the service has not answered since the page was opened. */
  readonly kept: boolean;
}

/** How often one question was asked, and which of these was answered last. */
interface Question {
  asked: number;
  taken: number;
}

/**
 * Asks for `path` (null: nothing yet) once, after each sign-in, and each time that `times` is another number. What the device
 * has kept of it is held while a slow network brings nothing. Undefined until anything of this path has come.
 */
export function useHeldAnswer<Answer>(path: string | null, times: number): HeldAnswer | undefined {
  const { epoch } = useContext(SessionContext);
  const [held, setHeld] = useState<HeldAnswer>();

  // What was asked of another path, or before a new sign-in, is not wanted any more.
  const question = useRef<Question | null>(null);
  useEffect(() => {
    question.current = { asked: 0, taken: 0 };
    return () => {
      question.current = null;
    };
  }, [path, epoch]);

  // A new sign-in and a reload both ask again.
  useEffect(() => {
    const here = question.current;
    if (path === null || here === null) return;
    here.asked += 1;
    const turn = here.asked;
    const isWanted = () => question.current === here;
    const isLatest = () => isWanted() && turn === here.asked;
    const showKept = async (found: CallProblem | null) => {
      const kept = knownAnswer(path) === null ? await keptAnswer(path) : null;
      if (!isLatest() || kept === null) return;
      // The service may have answered while the device was looking.
      setHeld((h) =>
        h?.path === path && h.known !== null ? h : { path, known: kept, problem: found, kept: true },
      );
    };
    const isSameSession = untilSessionChanges();
    /** What comes once somebody has signed out or in is of the session before: nobody who comes later is to see it. */
    const learn = (answer: Answer): Known => {
      if (!isSameSession()) return { value: answer, atMs: Date.now() };
      void keepAnswer(path, answer);
      return learnAnswer(path, answer);
    };
    const slow = setTimeout(() => void showKept(null), slowAfterMs());
    call<Answer>(path).then(
      (answer) => {
        clearTimeout(slow);
        // One that was asked for later has come already.
        if (turn < here.taken) return;
        here.taken = turn;
        const answered = learn(answer);
        // Also where it is being asked again: news that come faster than answers must not leave the page without any.
        if (isWanted()) setHeld({ path, known: answered, problem: null, kept: false });
      },
      async (error: unknown) => {
        clearTimeout(slow);
        const met = asProblem(error);
        if (met.status === 0) await showKept(met);
        if (!isLatest()) return;
        setHeld((h) =>
          h?.path === path
            ? { ...h, problem: met }
            : { path, known: knownAnswer(path), problem: met, kept: false },
        );
      },
    );
    return () => clearTimeout(slow);
  }, [path, epoch, times]);

  return held?.path === path ? held : undefined;
}
