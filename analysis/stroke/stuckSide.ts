import type { ActiveSide } from './activeSide.ts';

/**
 * Any motor's current comes from nothing by way of a start: a side whose level keeps within this part of itself all the
 * while, noise smoothed out, shows no motor.
 */
const MOST_CHANGE = 0.1;
/** A record that begins before its motor runs evenly begins this far from the running current, as a part of it. A guess, no source. */
const BEGINS_OTHERWISE = 0.5;

/** Whether the sensor of a side is stuck, of the `others` of which one at least shows how the stroke began: it reads one level throughout. */
export function isStuck({ rest }: ActiveSide, others: readonly ActiveSide[]): boolean {
  if (rest.offsetAmps !== null || !others.some(showsBeginning)) return false;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const amps of rest.smooth) {
    if (amps < lowest) lowest = amps;
    if (amps > highest) highest = amps;
  }
  return highest - lowest < MOST_CHANGE * highest;
}

/** Whether a side was seen to stand or to start. One switch drives all sides: what one shows of that, the others show. */
function showsBeginning({ rest: { stood, smooth, activeAmps } }: ActiveSide): boolean {
  return stood !== null || Math.abs(smooth[0] - activeAmps) > BEGINS_OTHERWISE * activeAmps;
}
