import type { PagedList } from '../../api/usePages.ts';
import { words } from '../../words.ts';
import { Failure } from './states.tsx';

/** The end of a list that goes on. */
export function More<Item>({ list }: { readonly list: PagedList<Item> }) {
  return (
    <>
      {list.moreProblem !== null && <Failure problem={list.moreProblem} />}
      {list.hasMore && (
        <button type="button" class="more" aria-disabled={list.busy} onClick={list.loadMore}>
          {list.busy ? words.loading : words.more}
        </button>
      )}
    </>
  );
}
