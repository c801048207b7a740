import { useFreshness } from '../api/freshness.ts';
import { agoText } from '../format.ts';
import { words } from '../words.ts';

/** How old the page is, while it is not the latest: there is no network, or a slow one. */
export function AsOf() {
  const freshness = useFreshness();
  return (
    <div role="status" class="as-of-place">
      {freshness !== null && (
        <p class="as-of">
          {freshness.offline
            ? words.offline.noNetwork(agoText(freshness.atMs))
            : words.offline.slow(agoText(freshness.atMs))}
        </p>
      )}
    </div>
  );
}
