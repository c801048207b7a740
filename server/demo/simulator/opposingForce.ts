import type { StrokeCondition } from './condition.ts';
import type { MovingSide } from './movingSide.ts';
import type { SimulatedRoom } from './room.ts';
import type { StrokeCourse } from './strokeCourse.ts';

/** Warmth takes no more than half off the dry friction. */
const LEAST_DRY = 0.5;

/**
 * What stands against one side of a room, newtons against the travel: its resistance at that place, dry and viscous; the
 * slope that the coach stands on; what holds it to the other sides, which have gone `meanMetres` on average; and the end stop.
 */
export function opposingForce(
  { load, control }: SimulatedRoom,
  { ambientC }: StrokeCondition,
  course: StrokeCourse,
): (side: MovingSide, meanMetres: number) => number {
  const cold = 20 - ambientC;
  const dry = (1 - load.viscousPart) * Math.max(1 + load.coldFrictionPerC * cold, LEAST_DRY);
  const viscous = (load.viscousPart * Math.exp(cold / load.coldStiffeningC)) / load.speedMetresPerS;
  return (side, meanMetres) => {
    const { table, goneMetres } = side;
    const lastCell = table.length - 1;
    const cell = Math.min(Math.max(course.positionOf(goneMetres) * lastCell, 0), lastCell - 1e-3);
    const below = cell | 0;
    const resistance = table[below] + (table[below + 1] - table[below]) * (cell - below);
    let force = resistance * (dry + viscous * side.radiansPerS * side.motor.metresPerRadian) + side.slopeN;
    const apart = goneMetres - meanMetres;
    const beyondPlay = Math.abs(apart) - control.skewPlayMetres / 2;
    if (beyondPlay > 0) force += Math.sign(apart) * beyondPlay * control.skewNPerMetre;
    const pressed = goneMetres - course.stopMetres;
    return pressed > 0 ? force + pressed * side.stopNPerMetre : force;
  };
}
