import type { WindingRoom } from './room.ts';
import type { StrokeState } from './strokeState.ts';

/** Cells along the travel. */
export const CELLS = 1024;

/** The forces that one side meets along the travel, by position, retracted first. */
export interface LoadTable {
  /** Friction, which grows at creeping speed. */
  readonly friction: Float64Array;
  /** What pushes against the movement whatever its speed: weight on a slope, seals; negative: it helps. */
  readonly push: Float64Array;
  viscous: number;
}

export function emptyLoadTable(): LoadTable {
  return { friction: new Float64Array(CELLS + 1), push: new Float64Array(CELLS + 1), viscous: 0 };
}

/** A pressed bulb seal gives back so much of its force when it is let go. */
const SEAL_RETURN = 0.4;
/** Where the rollers meet the ramp of a flush floor, and where they leave it. */
const RAMP_FROM = 0.84;
const RAMP_TO = 0.93;

/** Writes what a side meets in this stroke into its table. */
export function fillLoadTable(table: LoadTable, room: WindingRoom, state: StrokeState, side: number): void {
  const guide = room.guides[side];
  const own = state.sides[side];
  const below20 = 20 - state.ambientC;
  const coulomb =
    guide.coulombNewtons * own.coulomb * state.weight * (1 + room.cold.coulombPerKelvin * below20);
  const stiff = 1 + room.cold.wiperPerKelvin * below20;
  const wiper = guide.wiperNewtons * own.wiper * stiff;
  const weight = (room.weightNewtons * state.weight) / room.motors.length;
  const isOut = state.direction === 'extend';
  const tilt = weight * Math.sin(state.tiltRadians) * (isOut ? -1 : 1);
  const ramp = weight * room.rampSlope * (isOut ? -1 : 1);
  const bulbPart = guide.bulbMetres / room.travelMetres;
  const [inner, outer] = guide.bulbNewtons;
  const atInner = inner * stiff * (isOut ? -SEAL_RETURN : 1);
  const atOuter = outer * stiff * (isOut ? 1 : -SEAL_RETURN);
  table.viscous =
    guide.viscousNewtonSecondsPerMetre * own.viscous * Math.exp(room.cold.viscousPerKelvin * below20);
  const last = table.friction.length - 1;
  for (let cell = 0; cell <= last; cell++) {
    const position = cell / last;
    table.friction[cell] = coulomb * guide.course[cell] + wiper;
    let push = tilt;
    if (position > RAMP_FROM && position < RAMP_TO) push += ramp;
    if (position < bulbPart) push += atInner * pressed(1 - position / bulbPart);
    if (position > 1 - bulbPart) push += atOuter * pressed(1 - (1 - position) / bulbPart);
    table.push[cell] = push;
  }
  for (const stretch of own.stretches) {
    if (stretch.in !== null && stretch.in !== state.direction) continue;
    addStretch(table.friction, stretch.from, stretch.to, stretch.newtons);
  }
}

/** A hollow rubber section: soft at first, then stiffer. */
function pressed(part: number): number {
  return part * Math.sqrt(part);
}

/** A hill with rounded shoulders: half of a cosine over its width. */
function addStretch(into: Float64Array, from: number, to: number, newtons: number): void {
  const first = Math.max(0, Math.ceil(from * CELLS));
  const last = Math.min(CELLS, Math.floor(to * CELLS));
  for (let cell = first; cell <= last; cell++) {
    const part = (cell / CELLS - from) / (to - from);
    const shoulder = Math.min(1, part / 0.25, (1 - part) / 0.25);
    into[cell] = Math.max(0, into[cell] + newtons * 0.5 * (1 - Math.cos(Math.PI * shoulder)));
  }
}
