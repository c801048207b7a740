import { type RestLevel, SMOOTHING_S } from '../rest/restLevel.ts';
import type { Interval } from '../signal/interval.ts';
import { halfWindow, type SideSignal } from '../signal/sideSignal.ts';
import { heldMovement } from './heldMovement.ts';

/** When one side drew current: the whole span, and the rests within it. Null where it never did. */
export interface Activity extends Interval {
  readonly rests: readonly Interval[];
}

/** The median of w samples is so many times one sample's deviation over sqrt(w) noisy (J. F. Kenney, E. S. Keeping, 1962). */
const MEDIAN_NOISE = 1.25;
/** What stands clear of that by so many deviations is drive, and of the running level by this part, amperes at the least. */
const CLEAR_SIGMAS = 4;
const CLEAR_PART = 0.06;
const CLEAR_AMPS = 0.02;
/** A rest shorter than this is a dip of the load, not a released button. */
const SHORTEST_PAUSE_S = 0.25;

/**
 * When a side was driven: where its current, smoothed over a fifth of a second, stands clear of the sensor's noise.
 *
 * The threshold is four standard deviations of the smoothed noise, at least 6 % of the
 * running level, so that a side that lost its load still counts as driven; and no less than the step that a coarse
 * sensor flickers by, which no smoothing evens out. A motor that is held in place is driven while it moves (`heldMovement.ts`).
 */
export function activity(signal: SideSignal, rest: RestLevel): Activity | null {
  const half = halfWindow(signal, SMOOTHING_S);
  const { smooth } = rest;
  const n = smooth.length;
  const above = (samples: number) => {
    const smoothNoise = (MEDIAN_NOISE * rest.noiseAmps) / Math.sqrt(samples);
    const clear = Math.max(
      CLEAR_SIGMAS * smoothNoise,
      CLEAR_PART * rest.activeAmps,
      rest.stepAmps,
      CLEAR_AMPS,
    );
    return clear + (rest.offsetAmps ?? 0);
  };
  // Towards either end of the record the median is one of fewer samples.
  const isDriven = (i: number) => smooth[i] > above(Math.min(i, half) + Math.min(n - 1 - i, half) + 1);
  let first = 0;
  while (first < n && !isDriven(first)) first++;
  if (first === n) return null;
  let last = n - 1;
  while (!isDriven(last)) last--;
  if (rest.heldAmps !== null) {
    const { heldAmps, activeAmps: movingAmps } = rest;
    const movement = heldMovement(signal, smooth, { heldAmps, movingAmps });
    if (movement !== null) ({ first, last } = movement);
  }
  const threshold = above(2 * half + 1);
  const rests: Interval[] = [];
  for (let i = first + 1; i < last; i++) {
    if (smooth[i] > threshold) continue;
    const from = i;
    while (i < last && smooth[i] <= threshold) i++;
    const interval = { fromS: signal.timesS[from], toS: signal.timesS[i] };
    if (interval.toS - interval.fromS >= SHORTEST_PAUSE_S) rests.push(interval);
  }
  return { fromS: signal.timesS[first], toS: signal.timesS[last] + signal.stepS, rests };
}

/**
 * The times at which every side of the stroke rested: a pause of the whole room, not one side without load. A side that has
 * come to its end rests from then on, while another is let go and goes on.
 */
export function commonRests(activities: readonly Activity[]): Interval[] {
  const lastS = Math.max(...activities.map(({ toS }) => toS));
  const restsOf = ({ rests, toS }: Activity) =>
    lastS - toS < SHORTEST_PAUSE_S ? rests : [...rests, { fromS: toS, toS: lastS }];
  let common: Interval[] = [...restsOf(activities[0])];
  for (const activity of activities.slice(1)) {
    const both: Interval[] = [];
    for (const a of common) {
      for (const b of restsOf(activity)) {
        const fromS = Math.max(a.fromS, b.fromS);
        const toS = Math.min(a.toS, b.toS);
        if (toS - fromS >= SHORTEST_PAUSE_S) both.push({ fromS, toS });
      }
    }
    common = both;
  }
  return common;
}
