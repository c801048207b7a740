import { type Freshness, useFreshness } from '../../api/freshness.ts';
import { words } from '../../words.ts';
import { useAgo } from '../told/useAgo.ts';

function Age({ atMs, offline }: Freshness) {
  const ago = useAgo(atMs);
  return <p class="as-of">{offline ? words.offline.noNetwork(ago) : words.offline.slow(ago)}</p>;
}

/** How old the page is, while it is not the latest: there is no network, or a slow one. */
export function AsOf() {
  const freshness = useFreshness();
  return (
    // That it grows older minute by minute is not read aloud each time.
    <div role="status" aria-relevant="additions" class="as-of-place">
      {freshness !== null && <Age {...freshness} />}
    </div>
  );
}
