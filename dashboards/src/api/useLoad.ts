import { useCallback, useEffect, useState } from 'preact/hooks';
import type { CallProblem } from './client.ts';
import { useNoteFreshness } from './freshness.ts';
import { knownAnswer } from './knownAnswers.ts';
import { useHeldAnswer } from './useHeldAnswer.ts';
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

/** Loads `path` (null: nothing yet) and loads it anew after sign-in and every `everyMs` while that is given. */
export function useLoad<Answer>(
  path: string | null,
  everyMs: (value: Answer) => number | null = () => null,
): Load<Answer> {
  const [times, setTimes] = useState(0);
  const held = useHeldAnswer<Answer>(path, times);
  const latest = held?.known ?? (path === null ? null : knownAnswer(path));
  // What was kept under a path came from that path, so it has this answer's shape.
  const value = (latest?.value ?? null) as Answer | null;
  const problem = held?.problem ?? null;
  const reload = useCallback(() => setTimes((n) => n + 1), []);

  const offline = problem?.status === 0;
  useReconnect(problem?.passes === true, reload);
  useWhenNetworkGoes(reload);
  useNoteFreshness(latest !== null && (offline || held?.kept === true) ? latest.atMs : null, offline);

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
