import { useCallback, useContext, useEffect, useRef, useState } from 'preact/hooks';
import { SessionContext } from '../session.ts';
import { asProblem, type CallProblem, call, untilSessionChanges } from './client.ts';
import { useNoteFreshness } from './freshness.ts';
import { keepAnswer, keptAnswer } from './keptAnswers.ts';
import { type Known, knownAnswer, learnAnswer } from './knownAnswers.ts';
import { useReconnect, useWhenNetworkGoes } from './useReconnect.ts';

/**
 * What a page has of one answer. While a newer answer is on its way, or when it fails, the former one stays:
 * `value` and `problem` may both be there.
 */
export interface Load<Answer> {
  readonly value: Answer | null;
  readonly problem: CallProblem | null;
  readonly reload: () => void;
}

/** A network so slow that what the device has kept is shown in the meantime. */
const SLOW_AFTER_MS = 300;
/** Where the page itself took longer, that is known already. */
const SLOW_PAGE_MS = 600;

function slowAfterMs(): number {
  // Of this type there is the visit's own entry alone.
  const [visit] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
  return visit !== undefined && visit.responseStart > SLOW_PAGE_MS ? 0 : SLOW_AFTER_MS;
}

interface Held {
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

/** Loads `path` (null: nothing yet) and loads it anew after sign-in and every `everyMs` while that is given. */
export function useLoad<Answer>(
  path: string | null,
  everyMs: (value: Answer) => number | null = () => null,
): Load<Answer> {
  const { epoch } = useContext(SessionContext);
  const [times, setTimes] = useState(0);
  const [held, setHeld] = useState<Held>();
  const current = held?.path === path ? held : undefined;
  const latest = current?.known ?? (path === null ? null : knownAnswer(path));
  // What was kept under a path came from that path, so it has this answer's shape.
  const value = (latest?.value ?? null) as Answer | null;
  const problem = current?.problem ?? null;
  const reload = useCallback(() => setTimes((n) => n + 1), []);

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

  const offline = problem?.status === 0;
  useReconnect(problem?.passes === true, reload);
  useWhenNetworkGoes(reload);
  useNoteFreshness(latest !== null && (offline || current?.kept === true) ? latest.atMs : null, offline);

  // What was refused stays refused; what failed for a fault of ours is asked for at the usual pace.
  const goesOn = problem === null || problem.status >= 500;
  const waitMs = value === null || !goesOn || problem?.passes === true ? null : everyMs(value);
  // Each answer starts the wait anew.
  useEffect(() => {
    if (waitMs === null) return;
    const timer = setTimeout(reload, waitMs);
    return () => clearTimeout(timer);
  }, [waitMs, held]);

  return { value, problem, reload };
}
