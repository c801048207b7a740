import { useContext, useEffect, useState } from 'preact/hooks';
import { SessionContext } from '../session.ts';
import { asProblem, type CallProblem, call } from './client.ts';

interface Many<Answer> {
  /** In the order asked, as far as they have come. */
  readonly values: readonly Answer[];
  readonly problem: CallProblem | null;
}

/** Loads several paths at once and keeps what it has when one is added or taken away. */
export function useMany<Answer>(paths: readonly string[]): Many<Answer> {
  const { epoch } = useContext(SessionContext);
  const [held, setHeld] = useState<ReadonlyMap<string, Answer>>(new Map());
  const [problem, setProblem] = useState<CallProblem | null>(null);
  const asked = paths.join('\n');
  // The texts say what the list holds.
  useEffect(() => {
    let wanted = true;
    setProblem(null);
    for (const path of paths.filter((each) => !held.has(each))) {
      call<Answer>(path).then(
        (answer) => wanted && setHeld((before) => new Map(before).set(path, answer)),
        (error: unknown) => wanted && setProblem(asProblem(error)),
      );
    }
    return () => {
      wanted = false;
    };
  }, [asked, epoch]);
  return { values: paths.flatMap((path) => held.get(path) ?? []), problem };
}
