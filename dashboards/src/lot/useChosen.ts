import { useCallback, useState } from 'preact/hooks';

interface Choice {
  /** Ids of the coaches that are chosen. */
  readonly chosen: ReadonlySet<string>;
  /** Stays the same function, so that rows need not be drawn anew. */
  readonly choose: (id: string, isChosen: boolean) => void;
  readonly chooseOnly: (ids: readonly string[]) => void;
}

/** Which coaches of the list are chosen, to do something with all of them. */
export function useChosen(): Choice {
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const choose = useCallback((id: string, isChosen: boolean) => {
    setChosen((held) => {
      const next = new Set(held);
      if (isChosen) next.add(id);
      else next.delete(id);
      return next;
    });
  }, []);
  const chooseOnly = useCallback((ids: readonly string[]) => setChosen(new Set(ids)), []);
  return { chosen, choose, chooseOnly };
}
