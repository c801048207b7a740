/** A clamp whose rest reads further from zero than this, and than this part of the running current, lost its zero. */
export const OFFSET_AMPS = 0.9;
const OFFSET_PART = 0.15;

/** The most that a rest may read beside such a running current, amperes. */
export function mostOffset(runningAmps: number): number {
  return Math.max(OFFSET_AMPS, OFFSET_PART * runningAmps);
}

/** What is said of a sensor whose zero is off, by what it reads at rest. */
export function offsetDetail(amps: number): string {
  return `At rest the sensor reads ${amps.toFixed(1)} A instead of nothing.`;
}
