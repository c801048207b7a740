import { useCallback, useContext, useEffect, useState } from 'preact/hooks';
import { SessionContext } from '../session.ts';
import { asProblem, type CallProblem, call } from './client.ts';

/**
 * What a page has of one answer. While a newer answer is on its way, or when it fails, the former one stays:
 * `value` and `problem` may both be there.
 */
export interface Load<Answer> {
  readonly value: Answer | null;
  readonly problem: CallProblem | null;
  readonly reload: () => void;
}

/** Last answers by path, so that going back shows at once what was there. */
const kept = new Map<string, unknown>();

export function forgetAnswers(): void {
  kept.clear();
}

/** Loads `path` (null: nothing yet) and loads it anew after sign-in and every `everyMs` while that is given. */
export function useLoad<Answer>(
  path: string | null,
  everyMs: (value: Answer) => number | null = () => null,
): Load<Answer> {
  const { epoch } = useContext(SessionContext);
  const [times, setTimes] = useState(0);
  const [held, setHeld] = useState<{ path: string; value: Answer | null; problem: CallProblem | null }>();
  const current = held?.path === path ? held : undefined;
  // What was kept under a path came from that path, so it has this answer's shape.
  const value = current?.value ?? ((path === null ? null : (kept.get(path) ?? null)) as Answer | null);
  const reload = useCallback(() => setTimes((n) => n + 1), []);

  // A new sign-in and a reload both ask again.
  useEffect(() => {
    if (path === null) return;
    let wanted = true;
    call<Answer>(path).then(
      (answer) => {
        kept.set(path, answer);
        if (wanted) setHeld({ path, value: answer, problem: null });
      },
      (error: unknown) => {
        if (wanted)
          setHeld((h) => ({ path, value: (h?.path === path && h.value) || null, problem: asProblem(error) }));
      },
    );
    return () => {
      wanted = false;
    };
  }, [path, epoch, times]);

  const waitMs = value === null || current?.problem ? null : everyMs(value);
  // Each answer starts the wait anew.
  useEffect(() => {
    if (waitMs === null) return;
    const timer = setTimeout(reload, waitMs);
    return () => clearTimeout(timer);
  }, [waitMs, held]);

  return { value, problem: current?.problem ?? null, reload };
}
