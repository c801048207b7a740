import type { SideMeasures } from '../../measures.ts';

/**
 * Noise above this, and above this part of the running current, hides what the room does. Where no rest was read a motor's
 * own ripple looks like it, and more is wanted.
 */
const NOISE_AMPS = 0.7;
const NOISE_PART = { atRest: 0.1, running: 0.2 };

/** The most that a sensor's own noise may be, amperes, by whether a rest told it. */
export function mostNoise({
  runningAmps,
  offsetAmps,
}: Pick<SideMeasures, 'runningAmps' | 'offsetAmps'>): number {
  return Math.max(NOISE_AMPS, NOISE_PART[offsetAmps === null ? 'running' : 'atRest'] * runningAmps);
}

/** What is said of noise, amperes. */
export function noiseDetail(amps: number): string {
  return `The sensor's own noise is ${amps.toFixed(1)} A.`;
}
