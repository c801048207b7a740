import { greatest } from '../statistics/greatest.ts';
import { median } from '../statistics/median.ts';
import { quantile } from '../statistics/quantile.ts';
import { rollingMedian } from '../statistics/rollingMedian.ts';
import { isHeld, MOST_START_AMPS } from '../stroke/rest/heldLevel.ts';
import { SMOOTHING_S } from '../stroke/rest/restLevel.ts';
import { differenceNoise } from '../stroke/rest/rests.ts';
import { roughLevels } from '../stroke/rest/roughLevels.ts';
import { halfWindow, type SideSignal } from '../stroke/signal/sideSignal.ts';

/** What holds a motor is the lowest level of its record that lasts for so long, seconds: a drive that arrives rings for less. */
const SHORTEST_HOLD_S = 1;
/** Half-way up to the current of the way that needs less begins movement: the other way may need twice as much. */
const HALF = 0.5;
const LIGHTER = 0.25;
const HEAVIER = 0.75;
/**
 * A motor that is let go falls to nothing; one that is held lies lower than what holds it, for longer than a moment, by no more than
 * noise and these parts of what holds it and of what movement adds. Guesses: the one drive at hand overshoots by half.
 */
const NOTHING_PART = 0.6;
const NOTHING_ADDS = 0.6;
/** For so long, seconds: nobody sends a motor back sooner than it has come to rest. */
const SHORTEST_NOTHING_S = 0.25;
const CLEAR_SIGMAS = 5;
/** The median of w samples is so many times one sample's deviation over sqrt(w) noisy (J. F. Kenney, E. S. Keeping, 1962). */
const MEDIAN_NOISE = 1.25;

/** A recording of a motor that is held in place between its movements. */
export interface HeldLevels {
  /** Its current's moving median over a second, amperes as recorded. */
  readonly slow: Float64Array;
  readonly heldAmps: number;
  /** What lies above this is movement, amperes. */
  readonly aboveAmps: number;
}

/** What holds a motor in place between its movements; null where nothing does, or the motor was let go. */
export function heldLevels(signal: SideSignal): HeldLevels | null {
  const highest = greatest(signal.peakAmps);
  // Of nearly every motor its start alone tells that it was not held, and a day's recording need not be smoothed for that.
  if (highest - median(signal.amps) > MOST_START_AMPS) return null;
  const [half, slowHalf] = [SMOOTHING_S, SHORTEST_HOLD_S].map((seconds) => halfWindow(signal, seconds));
  const slow = rollingMedian(signal.amps, slowHalf);
  const lowest = -greatest(slow.map((amps) => -amps));
  const rough = lowest + HALF * (roughLevels(slow).rough - lowest);
  const first = lowest + HALF * (lighterAbove(slow, rough) - lowest);
  const heldAmps = median(slow.filter((amps) => amps <= first));
  const aboveAmps = heldAmps + HALF * (lighterAbove(slow, first) - heldAmps);
  const moving = slow.filter((amps) => amps > aboveAmps);
  const movingAmps = quantile(moving, HEAVIER);
  if (!isHeld({ heldAmps, movingAmps }, highest)) return null;
  const adds = quantile(moving, LIGHTER) - heldAmps;
  const noise = CLEAR_SIGMAS * MEDIAN_NOISE * differenceNoise(signal.amps);
  if (adds < noise / Math.sqrt(2 * slowHalf + 1)) return null;
  const stray = noise / Math.sqrt(2 * half + 1);
  const nothing = heldAmps - Math.max(stray, Math.min(NOTHING_PART * heldAmps, NOTHING_ADDS * adds));
  const isLetGo = staysBelow(rollingMedian(signal.amps, half), nothing, SHORTEST_NOTHING_S / signal.stepS);
  return isLetGo ? null : { slow, heldAmps, aboveAmps };
}

function lighterAbove(values: Float64Array, level: number): number {
  return quantile(
    values.filter((value) => value > level),
    LIGHTER,
  );
}

/** Whether so many values in a row lie below a level. */
function staysBelow(values: Float64Array, level: number, count: number): boolean {
  let below = 0;
  for (let i = 0; i < values.length; i++) {
    below = values[i] < level ? below + 1 : 0;
    if (below >= count) return true;
  }
  return false;
}
