import type { ActiveSide } from '../read/activeSide.ts';
import { firstAtOrAfter, type Interval } from '../signal/interval.ts';
import { briefWaits } from './briefWaits.ts';

/**
 * A side that draws less than this part of its running level is switched off: a motor that turns without load takes
 * more.
 */
const OFF_PART = 0.06;
/**
 * With a logger of at least this step between samples, seconds, a sample at zero may hold a little of what was drawn
 * before or after: the part is larger there. Guesses, no source.
 */
const SLOW = { stepS: 0.03, offPart: 0.12 };
/** The sensor's noise stays below this many of its standard deviations. */
const NOISE_SIGMAS = 4;
/** Anything shorter is a missed sample or a brush that bounced: no start follows it. */
const SHORTEST_S = 0.01;
/**
 * After a wait a start follows within this time, even a soft one, and reaches at least this many times the running
 * level. It may be low: in a short wait the load takes only a part of the motor's speed.
 */
const STARTS_WITHIN_S = 0.2;
const LEAST_START = 1.08;

/**
 * When this side alone was switched off on its way and started again: controllers that keep two motors in step make the
 * one that is ahead wait. Its new start is no jolt of the load. `within`: the running part of the side; `level`: its
 * running current, amperes. In order of time.
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
