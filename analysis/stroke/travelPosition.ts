import type { Direction } from '../trace.ts';
import { firstAtOrAfter, type Interval } from './signal/interval.ts';

/** What tells where a side was: `timesS`, `amps` and `volts` are as long as each other. */
export interface TravelInput {
  readonly timesS: Float64Array;
  /** Less the offset. */
  readonly amps: Float64Array;
  /** The moving part: from the start to the end stop or the end. */
  readonly moving: Interval;
  readonly pauses: readonly Interval[];
  /** The supply at each sample; null where nobody recorded it. */
  readonly volts: Float64Array | null;
  /** The largest stall current seen in this stroke (inrush or end stop), amperes. */
  readonly stallAmps: number;
  /** The typical running current, amperes. */
  readonly runningAmps: number;
  readonly direction: Direction;
}

/**
 * Position along the travel at each sample, 0 fully retracted to 1 fully extended, the moving part taken as the
 * whole travel; held at its ends before and after.
 *
 * With a supply reading, by the steady state of a permanent-magnet motor, speed = (V - I R) / Ke, integrated over
 * the moving part (A. E. Fitzgerald, C. Kingsley, S. D. Umans, Electric Machinery, chapter on DC machines): Ke falls
 * out by normalising; R is the supply over the largest stall current seen, and never such that the motor would lose
 * more than half of the supply while running. Without a supply reading, by time.
 */
export function travelPosition(input: TravelInput): Float64Array {
  const { timesS, amps, moving, pauses, volts, direction } = input;
  const n = timesS.length;
  const from = firstAtOrAfter(timesS, moving.fromS);
  const end = Math.min(n, firstAtOrAfter(timesS, moving.toS));
  const ohms = volts === null ? 0 : winding(input, volts, from, end);
  const travelled = new Float64Array(n);
  let sum = 0;
  let pause = 0;
  for (let i = Math.max(1, from + 1); i < end; i++) {
    const middle = (timesS[i] + timesS[i - 1]) / 2;
    while (pause < pauses.length && pauses[pause].toS <= middle) pause++;
    const standing = pause < pauses.length && middle >= pauses[pause].fromS;
    if (!standing) {
      const speed = volts === null ? 1 : Math.max(0, volts[i] - amps[i] * ohms);
      sum += speed * (timesS[i] - timesS[i - 1]);
    }
    travelled[i] = sum;
  }
  travelled.fill(sum, end);
  for (let i = 0; i < n; i++) {
    const share = sum > 0 ? travelled[i] / sum : 0;
    travelled[i] = direction === 'extend' ? share : 1 - share;
  }
  return travelled;
}

function winding(input: TravelInput, volts: Float64Array, from: number, end: number): number {
  let sum = 0;
  for (let i = from; i < end; i++) sum += volts[i];
  const mean = end > from ? sum / (end - from) : 0;
  const byStall = mean / Math.max(input.stallAmps, 1e-9);
  const atMost = (0.5 * mean) / Math.max(input.runningAmps, 1e-9);
  return Math.max(0, Math.min(byStall, atMost));
}
