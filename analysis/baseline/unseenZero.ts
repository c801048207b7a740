import { DAY_MS } from '../history.ts';
import type { DoneAnalysis, MeasureName } from '../measures.ts';

/** How far a clamp's zero wanders that is not seen at rest, a standard deviation, amperes: a guess, no source. */
const ZERO_AMPS = 0.2;
/** Within this many days it may have wandered that far: a guess, no source. */
const ZERO_DAYS = 10;

const OF_THE_CURRENT: ReadonlySet<MeasureName> = new Set([
  'runningAmps',
  'runningAmpsP90',
  'chargeAs',
  'energyJ',
]);

/**
 * What a zero that was not seen at rest may add to a measure of one side by now: a standard deviation on the measure's
 * scale, 0 where it was seen and for measures that it hardly moves. `sinceMs`: how long ago the normal was learnt.
 */
export function unseenZero(
  { sides, share }: DoneAnalysis,
  side: string,
  measure: MeasureName,
  sinceMs: number,
): number {
  const amps = ZERO_AMPS * Math.min(1, Math.max(0, sinceMs) / DAY_MS / ZERO_DAYS);
  const partOf = (name: string) => (sides[name].offsetAmps === null ? amps / sides[name].runningAmps : 0);
  if (OF_THE_CURRENT.has(measure)) return partOf(side);
  if (measure !== 'share' || share === null) return 0;
  return share[side] * (1 - share[side]) * Math.hypot(...Object.keys(share).map(partOf));
}
