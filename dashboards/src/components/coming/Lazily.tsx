import type { ComponentType } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import { CallProblem } from '../../api/client.ts';
import { useReconnect } from '../../api/useReconnect.ts';
import { words } from '../../words.ts';
import { Failure, Waiting } from './states.tsx';

/** A page in a chunk of its own: whoever never opens it never fetches it. */
export function lazily<Props extends object>(load: () => Promise<ComponentType<Props>>) {
  /** Once it is there, going back to it shows it at once and as far down as it was. */
  let loaded: ComponentType<Props> | null = null;
  return function Lazily(props: Props) {
    const [Page, setPage] = useState(() => loaded);
    const [failed, setFailed] = useState(false);
    const [tries, setTries] = useState(0);
    const again = useCallback(() => setTries((n) => n + 1), []);
    useReconnect(failed, again);
    // A try more fetches it anew.
    useEffect(() => {
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
    const retry = () => {
      setFailed(false);
      again();
    };
    return <Failure problem={new CallProblem(0, words.problems.network)} retry={retry} />;
  };
}
