import type { RestLevel } from '../rest/restLevel.ts';
import type { SideSignal } from '../signal/sideSignal.ts';

/**
 * A clamp that hangs beside its wire still reads a few per cent of the current, its start and its stall as well. The smallest
 * drive of which recordings are at hand, a linear actuator that moves 20 kg, runs with 0.65 A; a motor that draws less and
 * needs no more than so little to start and to stall moves no room. Amperes, guesses.
 */
const MOST_RUNNING_AMPS = 0.4;
const MOST_PEAK_AMPS = 2;

/** Whether all that a side's record holds is too little for a motor: what leaks into a clamp that was left off its wire. */
export function isLeakage({ peakAmps }: SideSignal, { activeAmps, offsetAmps }: RestLevel): boolean {
  if (activeAmps >= MOST_RUNNING_AMPS) return false;
  const most = MOST_PEAK_AMPS + (offsetAmps ?? 0);
  return peakAmps.every((amps) => amps < most);
}
