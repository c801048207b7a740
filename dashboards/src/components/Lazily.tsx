import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { CallProblem } from '../api/client.ts';
import { words } from '../words.ts';
import { Failure, Waiting } from './states.tsx';

/** A page in a chunk of its own: whoever never opens it never fetches it. */
export function lazily<Props extends object>(load: () => Promise<ComponentType<Props>>) {
  /** Once it is there, going back to it shows it at once and as far down as it was. */
  let loaded: ComponentType<Props> | null = null;
  return function Lazily(props: Props) {
    const [Page, setPage] = useState(() => loaded);
    const [failed, setFailed] = useState(false);
    const [tries, setTries] = useState(0);
    // A try more fetches it anew.
    useEffect(() => {
      setFailed(false);
      load().then(
        (page) => {
          loaded = page;
          setPage(() => page);
        },
        () => setFailed(true),
      );
    }, [tries]);
    if (Page !== null) return <Page {...props} />;
    if (!failed) return <Waiting />;
    return (
      <Failure problem={new CallProblem(0, words.problems.network)} retry={() => setTries((n) => n + 1)} />
    );
  };
}
