import { type FindingContext, isOpen } from '../finding.ts';

/**
 * Neither weather nor supply takes so much off a stall while running current and time stay within the limits after it.
 * Natural logarithms; `SIGMAS`: standard deviations of the stall.
 */
const FALLEN = -0.3;
const SIGMAS = 3;
const SAME_RUNNING = 0.15;
const NO_LONGER = 0.03;

/**
 * Whether a side's stall reads far less than it did although the side runs as ever: the sensor may have reached the end
 * of its range there, if it reads the same level each time. A bad contact would lower the stall as well, but slow the
 * room. False with a battery that is known to be weak: its stall lies lower than the baseline knows.
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
