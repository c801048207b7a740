import { useState } from 'preact/hooks';
import { asProblem, type CallProblem, call } from './client.ts';
import type { Page } from './types.ts';
import { type Load, useLoad } from './useLoad.ts';

/** A list that grows at its end as the reader asks for more. */
export interface PagedList<Item> {
  readonly first: Load<Page<Item>>;
  readonly items: readonly Item[];
  readonly hasMore: boolean;
  readonly busy: boolean;
  readonly moreProblem: CallProblem | null;
  readonly loadMore: () => Promise<void>;
}

interface Further<Item> {
  /** The first page that these items follow: a newer first page starts the list anew. */
  readonly after: Page<Item>;
  readonly items: readonly Item[];
  readonly next: string | null;
}

export function usePages<Item>(path: string, limit: number): PagedList<Item> {
  const at = `${path}${path.includes('?') ? '&' : '?'}limit=${limit}`;
  const first = useLoad<Page<Item>>(at);
  const [held, setHeld] = useState<Further<Item> | null>(null);
  const [busy, setBusy] = useState(false);
  const [moreProblem, setMoreProblem] = useState<CallProblem | null>(null);
  const further = held !== null && held.after === first.value ? held : null;
  const next = further === null ? (first.value?.next ?? null) : further.next;

  const loadMore = async () => {
    const after = first.value;
    if (busy || next === null || after === null) return;
    setBusy(true);
    setMoreProblem(null);
    try {
      const page = await call<Page<Item>>(`${at}&cursor=${encodeURIComponent(next)}`);
      setHeld({ after, items: [...(further?.items ?? []), ...page.items], next: page.next });
    } catch (error) {
      setMoreProblem(asProblem(error));
    } finally {
      setBusy(false);
    }
  };
  return {
    first,
    items: [...(first.value?.items ?? []), ...(further?.items ?? [])],
    hasMore: next !== null,
    busy,
    moreProblem,
    loadMore,
  };
}
