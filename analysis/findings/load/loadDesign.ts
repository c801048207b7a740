import type { Residual } from '../../baseline/judge.ts';
import { LEARNING_STROKES } from '../../baseline/strokesNeeded.ts';
import type { RoomState } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { DIRECTIONS, type Direction } from '../../trace.ts';
import { H_SIGMAS, K_SIGMAS, LEAST_RUN, SHARED_SIGMAS } from '../charts/chartDesign.ts';
import type { ChartDesign } from '../charts/chartStep.ts';
import { tellsSign } from '../sensorDoubt/turnedSensor.ts';

/**
 * Reference value and decision interval of a CUSUM of the load, on the measure's scale. Each is so many standard
 * deviations of a healthy stroke, or an absolute least, whichever is larger. `unseen`: standard deviation of what
 * unrecorded conditions may add to strokes in a row.
 */
export function loadDesign(
  { noise, uncertainty, zero }: Residual,
  { kLeast, hLeast }: { readonly kLeast: number; readonly hLeast: number },
  unseen: number,
): ChartDesign {
  const shared = Math.hypot(uncertainty, unseen);
  // What goes beyond the reference's own standard error is extrapolation: it counts twice.
  const extrapolated = Math.max(0, shared - noise / Math.sqrt(LEARNING_STROKES));
  const k = Math.max(K_SIGMAS * noise, kLeast) + SHARED_SIGMAS * Math.hypot(shared, zero) + extrapolated;
  return { k, h: Math.max(H_SIGMAS * noise, hLeast) };
}

/**
 * Standard deviation, on the measure's scale, of what a zero that no rest tells may have added. A sensor that reads
 * with its sign takes off in one direction what it adds in the other: a move that the latest strokes of both directions
 * share is not the zero's.
 */
export function zeroLeft(
  { signs }: RoomState,
  sides: readonly string[],
  { zero }: Residual,
  movesOf: (direction: Direction) => readonly number[],
): number {
  if (zero === 0 || !sides.every((side) => tellsSign(signs[side]))) return zero;
  const moves = DIRECTIONS.map((way) => movesOf(way).slice(-LEAST_RUN));
  if (moves.some(({ length }) => length < LEAST_RUN)) return zero;
  const [out, back] = moves.map(median);
  return Math.min(zero, Math.abs(out - back) / 2);
}
