import type { SideCondition, StrokeCondition } from './condition.ts';
import type { Plant, Side } from './plant.ts';

/** Entries along the travel, from fully in to fully out. */
export const PLACES = 1024;

/** Part of the travel over which the glides go down. */
const RAMP_PART = 0.1;

/** One side's resistance by place, newtons: `sliding` against any movement, `pushing` against extending only. */
export interface LoadTable {
  readonly sliding: Float64Array;
  readonly pushing: Float64Array;
}

/** The resistance that one side's share of the room has in one stroke. */
export function loadTable(plant: Plant, side: Side, stroke: StrokeCondition, own: SideCondition): LoadTable {
  const sliding = new Float64Array(PLACES);
  const pushing = new Float64Array(PLACES);
  const { geometry, newtons } = side;
  const { travelMetres, turnMetres, teeth } = plant;
  const tilt = stroke.tiltNewtons / plant.sides.length;
  for (let place = 0; place < PLACES; place++) {
    const at = place / (PLACES - 1);
    const turn = (2 * Math.PI * at * travelMetres) / turnMetres + geometry.turnPhase;
    const rolling = geometry.rolling * (1 + geometry.overhang * (at - 0.5));
    const ripple =
      1 + geometry.turnRipple * Math.sin(turn) + geometry.toothRipple * Math.sin(teeth * turn + 1);
    const onRamp = (at - geometry.rampFrom) / RAMP_PART;
    const ramp = onRamp > 0 && onRamp < 1 ? geometry.ramp * Math.sin(Math.PI * onRamp) : 0;
    sliding[place] =
      newtons * own.frictionFactor * ripple * (rolling + geometry.wiper * stroke.wiperFactor) +
      own.dragNewtons;
    const squeeze = (depth: number) => Math.max(0, depth / geometry.sealPart) ** 1.5 * stroke.sealFactor;
    pushing[place] =
      tilt +
      newtons *
        (stroke.topperFactor * (geometry.topper + geometry.topperRise * at) -
          ramp +
          geometry.sealOut * squeeze(at - 1 + geometry.sealPart) -
          geometry.sealIn * squeeze(geometry.sealPart - at));
  }
  for (const { position, width, height } of geometry.seams)
    addBump(sliding, position, width, height * newtons);
  for (const { position, widthMetres, newtons: peak } of own.bumps)
    addBump(sliding, position, widthMetres / travelMetres, peak);
  return { sliding, pushing };
}

/** `width`: part of the travel. */
function addBump(table: Float64Array, position: number, width: number, newtons: number): void {
  const first = Math.max(0, Math.ceil((position - width / 2) * (PLACES - 1)));
  const last = Math.min(PLACES - 1, Math.floor((position + width / 2) * (PLACES - 1)));
  for (let place = first; place <= last; place++) {
    const along = (place / (PLACES - 1) - position) / width + 0.5;
    table[place] += newtons * Math.sin(Math.PI * along);
  }
}
