import { MEASURES } from '../api/questions.ts';
import type { Comparison, MeasureTitle, Page, Service, Warning } from '../api/types.ts';
import { useLiveRoom } from '../api/useLiveRoom.ts';
import { type Load, useLoad } from '../api/useLoad.ts';
import { comparisonPath, type Question } from './question.ts';

const MOST_SERVICES = 500;
const MOST_WARNINGS = 500;
const WITHOUT_FEED_MS = 60_000;

/** What the page of before and after has of its answers. */
interface ComparisonLoads {
  readonly titles: Load<readonly MeasureTitle[]>;
  readonly services: Load<Page<Service>>;
  readonly warnings: Load<Page<Warning>>;
  readonly comparison: Load<Comparison>;
  /** The first sentence says what was done and what became of its warning: one of them is still to come. */
  readonly isAnsweredLater: boolean;
  /** The work that was asked for is there no more: its link may be older than its deletion. */
  readonly isGone: boolean;
}

/** Before against after, as `asked` (null: nothing that can be answered), kept up to date. */
export function useComparison(roomId: string, asked: Question | null): ComparisonLoads {
  const titles = useLoad<readonly MeasureTitle[]>(MEASURES);
  const services = useLoad<Page<Service>>(`/rooms/${roomId}/services?limit=${MOST_SERVICES}`);
  const live = useLiveRoom(roomId, (_, isFirst) => {
    if (isFirst) return;
    comparison.reload();
    warnings.reload();
  });
  const comparison = useLoad<Comparison>(asked === null ? null : comparisonPath(roomId, asked), () =>
    live ? null : WITHOUT_FEED_MS,
  );
  const warnings = useLoad<Page<Warning>>(
    asked?.kind === 'service' ? `/rooms/${roomId}/warnings?limit=${MOST_WARNINGS}` : null,
  );
  const isAnsweredLater =
    asked?.kind === 'service' &&
    [services, warnings].some((load) => load.value === null && load.problem === null);
  const isGone = comparison.problem?.fields.some(({ pointer }) => pointer === '/service') === true;
  return { titles, services, warnings, comparison, isAnsweredLater, isGone };
}
