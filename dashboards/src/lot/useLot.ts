import type { CoachOverview, OverviewSummary } from '../api/types.ts';
import { useEvery } from '../api/useEvery.ts';
import { useLiveRooms } from '../api/useLiveRooms.ts';
import { type Load, useLoad } from '../api/useLoad.ts';
import { type PagedList, usePages } from '../api/usePages.ts';
import { useRefresh } from '../api/useRefresh.ts';

const EVERY_MS = 60_000;

/** What the lot has of its answers. */
interface LotLoads {
  /** All that the reader sees, in numbers. */
  readonly summary: Load<OverviewSummary>;
  readonly list: PagedList<CoachOverview>;
  /** Asks for both anew. */
  readonly reload: () => void;
}

/** The coaches under `path`, `atOnce` at a time, and the numbers of the lot, kept up to date. */
export function useLot(path: string, since: string | null, atOnce: number): LotLoads {
  const summary = useLoad<OverviewSummary>(
    since === null ? '/overview/summary' : `/overview/summary?since=${encodeURIComponent(since)}`,
    () => EVERY_MS,
  );
  const list = usePages<CoachOverview>(path, atOnce);
  const reload = () => {
    list.first.reload();
    summary.reload();
  };
  const live = useLiveRooms(
    list.items.flatMap((coach) => coach.rooms),
    reload,
  );
  // The feed tells of the first rooms alone; of all others, and of coaches that were added, the numbers do.
  useEvery(live ? null : EVERY_MS, list.first.reload);
  useRefresh(summary.value === null ? '' : JSON.stringify(summary.value), list.first.reload);
  return { summary, list, reload };
}
