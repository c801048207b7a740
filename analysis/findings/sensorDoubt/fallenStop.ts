import { type FindingContext, isOpen } from '../finding.ts';

/** Natural logarithms: no weather and no supply takes so much off a stall that leaves the running current and the time. */
const FALLEN = -0.3;
const SIGMAS = 3;
const SAME_RUNNING = 0.15;
const NO_LONGER = 0.03;

/**
 * Whether a side's stall reads far less than it did though the side runs as ever: a sensor that comes to its end there, if it
 * does so at one level. A bad contact would lower it as well, but slow the room; a battery that is known to be weak stalls lower
 * than any normal can be asked about.
 */
export function stopFell(
  { state, residual }: Pick<FindingContext, 'state' | 'residual'>,
  side: string,
): boolean {
  if (isOpen(state, 'weak-supply')) return false;
  const stop = residual(side, 'endStopAmps');
  const running = residual(side, 'runningAmps');
  const duration = residual(side, 'durationS');
  if (stop === null || running === null || duration === null) return false;
  const fell = stop.rise < Math.min(FALLEN, -SIGMAS * stop.deviation);
  return fell && Math.abs(running.rise) < SAME_RUNNING && duration.rise < NO_LONGER;
}
