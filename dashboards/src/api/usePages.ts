import { useEffect, useState } from 'preact/hooks';
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

interface WithId {
  readonly id: string;
}

interface Further<Item> {
  readonly question: string;
  /** The first page that these items follow. */
  readonly after: Page<Item>;
  readonly items: readonly Item[];
  readonly next: string | null;
}

/** As many as the service gives at once. */
const MOST_AT_ONCE = 500;

/** What is still the same is the same object: it is not drawn anew. */
function asBefore<Item extends WithId>(items: readonly Item[], before: readonly Item[]): Item[] {
  const held = new Map(before.map((item) => [item.id, item]));
  return items.map((item) => {
    const was = held.get(item.id);
    return was !== undefined && JSON.stringify(was) === JSON.stringify(item) ? was : item;
  });
}

/** Asks a list anew behind its first page: as far as it was there before, and whole if it was. */
async function askAnew<Item extends WithId>(
  before: Further<Item>,
  after: Page<Item>,
  pageAt: (limit: number, cursor: string) => string,
): Promise<Further<Item>> {
  const wanted = before.next === null ? Number.POSITIVE_INFINITY : before.items.length;
  const items: Item[] = [];
  let { next } = after;
  while (next !== null && items.length < wanted) {
    const limit = Math.min(MOST_AT_ONCE, wanted - items.length);
    const page: Page<Item> = await call<Page<Item>>(pageAt(limit, next));
    items.push(...page.items);
    next = page.next;
  }
  return { question: before.question, after, items: asBefore(items, before.items), next };
}

/** A newer first page leaves what follows it where it is until that was asked anew, too: nobody loses the place. */
export function usePages<Item extends WithId>(path: string, limit: number): PagedList<Item> {
  const limited = (most: number) => `${path}${path.includes('?') ? '&' : '?'}limit=${most}`;
  const pageAt = (most: number, cursor: string) => `${limited(most)}&cursor=${encodeURIComponent(cursor)}`;
  const at = limited(limit);
  const first = useLoad<Page<Item>>(at);
  const [held, setHeld] = useState<Further<Item> | null>(null);
  const [busy, setBusy] = useState(false);
  const [moreProblem, setMoreProblem] = useState<CallProblem | null>(null);
  const further = held !== null && held.question === at ? held : null;
  const isOld = further !== null && first.value !== null && further.after !== first.value;
  const next = further === null ? (first.value?.next ?? null) : further.next;

  const loadMore = async () => {
    const after = first.value;
    if (busy || next === null || after === null || (isOld && moreProblem === null)) return;
    setBusy(true);
    setMoreProblem(null);
    try {
      const page = await call<Page<Item>>(pageAt(limit, next));
      const items = [...(further?.items ?? []), ...page.items];
      setHeld({ question: at, after, items, next: page.next });
    } catch (error) {
      setMoreProblem(asProblem(error));
    } finally {
      setBusy(false);
    }
  };

  useEffect(() => {
    if (!isOld || first.value === null || further === null) return;
    let wanted = true;
    askAnew(further, first.value, pageAt).then(
      (anew) => wanted && setHeld(anew),
      (error: unknown) => wanted && setMoreProblem(asProblem(error)),
    );
    return () => {
      wanted = false;
    };
  }, [isOld, first.value, at]);

  const begin = first.value?.items ?? [];
  const there = new Set(begin.map(({ id }) => id));
  return {
    first,
    // Between two answers one thing may have moved from the one into the other.
    items: [...begin, ...(further?.items ?? []).filter(({ id }) => !there.has(id))],
    hasMore: next !== null,
    busy,
    moreProblem,
    loadMore,
  };
}
