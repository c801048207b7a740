import type { SideMeasures } from '../../measures.ts';

/**
 * Noise above both this and this part of the running current hides what the room does. Where no rest was read, the
 * motor's own ripple looks like noise, so the part is larger.
 */
const NOISE_AMPS = 0.7;
const NOISE_PART = { atRest: 0.1, running: 0.2 };

/** The most that a sensor's own noise may be, amperes; it may be more where no rest told it (`offsetAmps` null). */
export function mostNoise({
  runningAmps,
  offsetAmps,
}: Pick<SideMeasures, 'runningAmps' | 'offsetAmps'>): number {
  return Math.max(NOISE_AMPS, NOISE_PART[offsetAmps === null ? 'running' : 'atRest'] * runningAmps);
}

/** The sentence that tells people of the noise, given in amperes. */
export function noiseDetail(amps: number): string {
  return `The sensor's own noise is ${amps.toFixed(1)} A.`;
}
