import { medianInPlace } from '../../statistics/median.ts';
import { ReusedArray } from '../../statistics/reusedArray.ts';

/** A motor that turns without load draws no less of its stall than this; and so many times the noise, or nothing is told. */
const LEAST_OF_STALL = 0.03;
const LEAST_NOISES = 6;
/** What most of the drive draws is this small a part of the typical level only where that is the stall's. */
const LIGHT_PART = 0.25;

/**
 * What the motor draws for most of its drive. Where it lost its load, or runs as lightly as none, and then stalls for long, the
 * typical level is the stall's, below which all of the drive looks like rest. `high`: that level less the offset, amperes.
 */
export function drivenLevel(smooth: Float64Array, offset: number, high: number, noiseAmps: number): number {
  const least = Math.max(LEAST_OF_STALL * high, LEAST_NOISES * noiseAmps);
  if (least > LIGHT_PART * high || !areMostBetween(smooth, offset + least, offset + LIGHT_PART * high))
    return high;
  const level = medianAbove(smooth, offset + least) - offset;
  return level < LIGHT_PART * high ? level : high;
}

/** Whether at least half of the values above `low` are not above `high`: only then their median can be so low. */
function areMostBetween(values: Float64Array, low: number, high: number): boolean {
  let between = 0;
  let above = 0;
  for (let i = 0; i < values.length; i++) {
    if (values[i] > high) above++;
    else if (values[i] > low) between++;
  }
  return between > 0 && between >= above;
}

const forNow = new ReusedArray();

/** The median of the values above a level; the level where there is none. */
export function medianAbove(values: Float64Array, level: number): number {
  const above = forNow.atLeast(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) if (values[i] > level) above[count++] = values[i];
  return count > 0 ? medianInPlace(above.subarray(0, count)) : level;
}
