import type { ActiveSide } from '../read/activeSide.ts';
import { firstAtOrAfter, type Interval } from '../signal/interval.ts';
import { briefWaits } from './briefWaits.ts';

/** What draws less of the running level than this is switched off: a motor that turns without load takes more. */
const OFF_PART = 0.06;
/** A sample of a slow logger, seconds from one to the next, holds a little of what was drawn before or after. Guesses, no source. */
const SLOW = { stepS: 0.03, offPart: 0.12 };
/** The sensor's noise stays below so many of its deviations. */
const NOISE_SIGMAS = 4;
/** Shorter than this is a missed sample or a brush that bounced, after which no start follows. */
const SHORTEST_S = 0.01;
/**
 * A start follows at once, also a soft one, and stands so many times the running level high: the load has slowed the motor by
 * no more than a part of its speed while it was off, so that a short wait is followed by a low start.
 */
const STARTS_WITHIN_S = 0.2;
const LEAST_START = 1.08;

/**
 * When one side alone was switched off on its way and started anew: controllers that keep two motors in step let the one
 * that is ahead wait. Its new start is no jolt of the load. `within`: the running part of the side; `level`: its running
 * current, amperes.
 */
export function ownWaits(
  { signal: { timesS, stepS }, rest: { noiseAmps, stepAmps }, amps }: ActiveSide,
  within: Interval,
  level: number,
): Interval[] {
  const offPart = stepS >= SLOW.stepS ? SLOW.offPart : OFF_PART;
  const off = Math.max(offPart * level, NOISE_SIGMAS * noiseAmps, stepAmps);
  if (off > level / 2) return [];
  const start = Math.max(LEAST_START * level, level + NOISE_SIGMAS * noiseAmps);
  const end = firstAtOrAfter(timesS, within.toS);
  const waits: Interval[] = [];
  const first = firstAtOrAfter(timesS, within.fromS);
  for (let i = first; i < end; i++) {
    if (amps[i] > off) continue;
    const from = i;
    while (i < end && amps[i] <= off) i++;
    const lastsS = timesS[Math.min(i, timesS.length - 1)] - timesS[from];
    const started = firstAtOrAfter(timesS, timesS[from] + lastsS + Math.max(STARTS_WITHIN_S, 2 * stepS));
    if (lastsS >= SHORTEST_S && highest(amps, i, Math.min(end, started)) > start)
      waits.push({ fromS: timesS[from], toS: timesS[from] + lastsS });
  }
  const brief = briefWaits({ timesS, stepS, amps, noiseAmps }, first, end);
  return inOrder([...waits, ...brief]);
}

/** In order of time, each moment once. */
function inOrder(waits: Interval[]): Interval[] {
  const sorted = waits.sort((a, b) => a.fromS - b.fromS);
  return sorted.filter(({ fromS }, i) => i === 0 || fromS > sorted[i - 1].toS);
}

function highest(amps: Float64Array, from: number, end: number): number {
  let most = 0;
  for (let i = from; i < end; i++) most = Math.max(most, amps[i]);
  return most;
}
