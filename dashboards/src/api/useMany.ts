import { useContext, useEffect, useState } from 'preact/hooks';
import { SessionContext } from '../session.ts';
import { asProblem, type CallProblem, call } from './client.ts';

interface Many<Answer> {
  /** In the order asked, as far as they have come. */
  readonly values: readonly Answer[];
  readonly problem: CallProblem | null;
  readonly reload: () => void;
}

interface Held<Answer> {
  readonly version: string;
  readonly answer: Answer;
}

/**
 * Loads several paths at once and keeps what it has when one is added or taken away. Another `version` of what they answer
 * is asked for anew; what was there stays until it came.
 */
export function useMany<Answer>(paths: readonly string[], version = ''): Many<Answer> {
  const { epoch } = useContext(SessionContext);
  const [held, setHeld] = useState<ReadonlyMap<string, Held<Answer>>>(new Map());
  const [problem, setProblem] = useState<CallProblem | null>(null);
  const [times, setTimes] = useState(0);
  const asked = paths.join('\n');
  // The texts say what the list holds.
  useEffect(() => {
    let wanted = true;
    setProblem(null);
    for (const path of paths.filter((each) => held.get(each)?.version !== version)) {
      call<Answer>(path).then(
        (answer) => wanted && setHeld((before) => new Map(before).set(path, { version, answer })),
        (error: unknown) => wanted && setProblem(asProblem(error)),
      );
    }
    return () => {
      wanted = false;
    };
  }, [asked, version, epoch, times]);
  return {
    values: paths.flatMap((path) => held.get(path)?.answer ?? []),
    problem,
    reload: () => setTimes((n) => n + 1),
  };
}
