import { median } from '../../statistics/median.ts';
import { presentAsTheyAre } from '../../statistics/select.ts';
import type { SideTrace } from '../../trace.ts';
import { firstAtOrAfter } from './interval.ts';

/** A braked motor stands still within so long: a guess with room to spare, no source. */
const LONGEST_SWING_S = 1.2;
/** So many samples in a row are driven before it; where it turns round, in samples and seconds. */
const DRIVEN_SAMPLES = 8;
const PEAK_SAMPLES = 3;
const PEAK_S = 0.08;
/** It goes against the current before it by so much of that. */
const LEAST_HEIGHT = 0.3;
/** It falls little by little: so many samples are above the first part of its height, none rises by the second. */
const FEWEST_SAMPLES = 2;
const OVER = 0.12;
const UNEVEN = 0.25;
/** The rest after it: two halves of so long that differ by no more than this part of its height. */
const REST_S = 0.3;
const LEVEL = 0.03;
/** The drive before it lasts so long at least, and so many times as long as the swing. */
const LEAST_DRIVEN_S = 1;
const DRIVEN_TIMES = 3;
const DRIVEN_PART = 0.9;
/** No rest lies so far from zero, as a part of the drive, or lasts so many times as long at the end of a record. */
const MOST_REST = 0.5;
const LONGEST_REST = 2;
/** A motor that starts again soon draws so many times what it drew. */
const START_S = 0.3;
const START_TIMES = 1.3;

interface Swing {
  /** Index of the first sample at rest. */
  readonly end: number;
  /** null: the record ends before the motor stands. */
  readonly restAmps: number | null;
}

/**
 * A side without the swings of a braked motor. Many controllers short a motor as they switch it off: it turns on for a
 * moment and drives a current through itself, against the one that drove it and as high as a start's, that dies away
 * with its speed. That is neither a rest nor a current of the other direction. Each swing is held at the rest that
 * follows it; a record that ends within one ends before it. The same trace where there is none.
 */
export function withoutBraking(trace: SideTrace): SideTrace {
  let { amps } = trace;
  for (let i = DRIVEN_SAMPLES; i < amps.length; i++) {
    if (!turnsAt(amps, i)) continue;
    const swing = swingAt({ ...trace, amps }, i);
    if (swing === null) continue;
    if (swing.restAmps === null) {
      return { ...trace, timesS: trace.timesS.subarray(0, i), amps: amps.subarray(0, i) };
    }
    if (amps === trace.amps) amps = amps.slice();
    amps.fill(swing.restAmps, i, swing.end);
    i = swing.end;
  }
  return amps === trace.amps ? trace : { ...trace, amps };
}

/** Whether the sign changes at this sample, after several that were alike. Missed samples are no hindrance. */
function turnsAt(amps: Float64Array, i: number): boolean {
  // Of nearly all samples the one before has the same sign.
  if (amps[i] * amps[i - 1] > 0) return false;
  const sign = Math.sign(amps[i]);
  if (!(Math.abs(sign) === 1)) return false;
  for (let j = i - 1; j >= i - DRIVEN_SAMPLES; j--) if (amps[j] * sign >= 0) return false;
  return true;
}

function swingAt({ timesS, amps }: SideTrace, from: number): Swing | null {
  if (!(timesS[from] - timesS[0] >= LEAST_DRIVEN_S)) return null;
  const sign = Math.sign(amps[from]);
  const span = (fromS: number, toS: number) =>
    amps.subarray(firstAtOrAfter(timesS, fromS), firstAtOrAfter(timesS, toS));
  const drive = median(presentAsTheyAre(span(timesS[from] - LEAST_DRIVEN_S / 2, timesS[from])));
  let peak = from;
  const peakEnd = Math.max(from + PEAK_SAMPLES, firstAtOrAfter(timesS, timesS[from] + PEAK_S));
  for (let i = from; i < Math.min(peakEnd, amps.length); i++)
    if (amps[i] * sign > amps[peak] * sign) peak = i;
  const height = amps[peak] * sign;
  if (!(height > LEAST_HEIGHT * Math.abs(drive))) return null;
  const swing = fallFrom(timesS, amps, peak, height);
  if (swing === null) return null;
  const rest = swing.restAmps ?? 0;
  const lastS = timesS[Math.min(swing.end, amps.length - 1)] - timesS[from];
  const before = presentAsTheyAre(
    span(timesS[from] - Math.max(LEAST_DRIVEN_S, DRIVEN_TIMES * lastS), timesS[from]),
  );
  const middle = (drive + rest) / 2;
  const isDriven = (value: number) => (value - middle) * sign < 0;
  if (before.filter(isDriven).length < DRIVEN_PART * before.length) return null;
  if (Math.abs(rest) > MOST_REST * Math.abs(drive) || (rest - drive) * sign <= 0) return null;
  return isRest({ timesS, amps }, swing.end, drive, rest, from) ? swing : null;
}

/**
 * Whether what follows a swing is a rest: the record ends with it, sooner than with a running current, or the motor
 * starts again. Where a zero lies as far below nothing as the motor draws, a start looks like a swing.
 */
function isRest(
  { timesS, amps }: Pick<SideTrace, 'timesS' | 'amps'>,
  end: number,
  drive: number,
  rest: number,
  from: number,
): boolean {
  const above = (value: number) => (value - rest) / (drive - rest);
  let to = end;
  while (to < amps.length && !(Math.abs(above(amps[to])) > 0.5)) to++;
  if (to < amps.length) {
    const start = amps.subarray(to, firstAtOrAfter(timesS, timesS[to] + START_S));
    return start.some((value) => above(value) > START_TIMES);
  }
  const driven = amps.subarray(0, from).filter((value) => above(value) > 0.5);
  return to - end < LONGEST_REST * driven.length;
}

/** How the current comes to rest from the `peak` on; null where it does not, or not little by little. */
function fallFrom(timesS: Float64Array, amps: Float64Array, peak: number, height: number): Swing | null {
  const sign = Math.sign(amps[peak]);
  let lowest = height;
  let above = 0;
  for (let i = peak; i < amps.length && timesS[i] - timesS[peak] <= LONGEST_SWING_S; i++) {
    if (Number.isNaN(amps[i])) continue;
    const value = amps[i] * sign;
    if (value > lowest + UNEVEN * height) return null;
    lowest = Math.min(lowest, value);
    const after = presentAsTheyAre(amps.subarray(i, firstAtOrAfter(timesS, timesS[i] + REST_S)));
    const restAmps = i === peak || after.length < 3 ? null : levelOf(after, LEVEL * height);
    // The middle of a swing that is over soon is its rest, from its height on.
    if (restAmps !== null && Math.abs(amps[i] - restAmps) <= OVER * height) {
      if (above < FEWEST_SAMPLES) return null;
      // What is left of the swing is in the first half still.
      const end = firstAtOrAfter(timesS, timesS[i] + REST_S / 2);
      const settled = presentAsTheyAre(
        amps.subarray(end, firstAtOrAfter(timesS, timesS[i] + LONGEST_SWING_S)),
      );
      return { end, restAmps: settled.length < 3 ? restAmps : median(settled) };
    }
    if (value > OVER * height) above++;
  }
  const isCutShort = timesS[timesS.length - 1] - timesS[peak] <= LONGEST_SWING_S;
  return isCutShort && above >= FEWEST_SAMPLES ? { end: amps.length, restAmps: null } : null;
}

/** The level of readings whose two halves differ by no more than `slack`; null where they do. */
function levelOf(readings: Float64Array, slack: number): number | null {
  const half = Math.ceil(readings.length / 2);
  const apart = Math.abs(median(readings.subarray(0, half)) - median(readings.subarray(-half)));
  return apart <= slack ? median(readings) : null;
}
