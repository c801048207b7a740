import { greatest } from '../../statistics/greatest.ts';
import { rangeOf } from '../../statistics/range.ts';
import type { ActiveSide } from './activeSide.ts';

/**
 * Any motor's current comes from nothing by way of a start: a side whose level keeps within this part of itself all the
 * while, noise smoothed out, shows no motor. One switch drives all sides: where one was seen to stand, the others stood too.
 * A record that begins as the motors do tells nothing of that: a motor that hardly turns draws its start all the way.
 */
const MOST_CHANGE = 0.1;

/** Whether the sensor of a side is stuck, of the `others` of which one at least was seen to stand: it reads one level throughout. */
export function isStuck({ rest }: ActiveSide, others: readonly ActiveSide[]): boolean {
  if (rest.offsetAmps !== null || !others.some(({ rest: { stood } }) => stood !== null)) return false;
  return rangeOf(rest.smooth) < MOST_CHANGE * greatest(rest.smooth);
}
