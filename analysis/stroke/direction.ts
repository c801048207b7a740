import { median } from '../statistics/median.ts';
import type { Direction, RoomDescription, StrokeTrace } from '../trace.ts';

/**
 * The direction told by the sign of the current: positive drives the room in its `positiveDirection`. Null where the
 * sign cannot be told, as when the sides disagree or nothing flowed.
 *
 * A side's sign is that of the median of its samples above three tenths of its largest magnitude about its middle.
 */
export function directionBySign(
  trace: Pick<StrokeTrace, 'sides'>,
  room: Pick<RoomDescription, 'positiveDirection'>,
): Direction | null {
  const signs = trace.sides.map(({ amps }) => signOf(amps)).filter((sign) => sign !== 0);
  if (signs.length === 0 || signs.some((sign) => sign !== signs[0])) return null;
  const other: Direction = room.positiveDirection === 'extend' ? 'retract' : 'extend';
  return signs[0] > 0 ? room.positiveDirection : other;
}

/** +1 or -1 for the way the motor was driven, 0 where nothing flowed. `amps` may hold NaN. */
export function signOf(amps: Float64Array): 1 | -1 | 0 {
  let largest = 0;
  for (const value of amps) if (Math.abs(value) > largest) largest = Math.abs(value);
  const strong = amps.filter((value) => Math.abs(value) > 0.3 * largest);
  if (strong.length === 0) return 0;
  const middle = median(strong);
  if (middle === 0 || Number.isNaN(middle)) return 0;
  return middle > 0 ? 1 : -1;
}
