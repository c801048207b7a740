import type { Direction } from '../../../analysis/trace.ts';
import type { Condition } from './condition.ts';
import type { CableRoom } from './room.ts';

/** What a side of the room meets at one place: what rubs, and what pushes whether it moves or not. */
export interface PushBack {
  /** Newtons against any movement. */
  rubbing: number;
  /** Newtons against the stroke; negative: with it. */
  pushing: number;
  /** Newtons a metre a second. */
  drag: number;
}

const GRAVITY = 9.81;
/** How far a wiper goes before it has turned over, and a roller before it has broken away. */
const FOLD_METRES = 0.025;
const BREAKAWAY_METRES = 0.012;
const BREAKAWAY_PART = 0.2;
const EDGE_METRES = 0.03;
/** Days in which a seal takes on its shape. */
const SET_DAYS = 10;

/** What is the same all through a stroke, worked out once; positions in metres from the retracted end. */
export function pushBackOf(room: CableRoom, condition: Condition, direction: Direction, at: number) {
  const side = room.sides[at];
  const own = condition.sides[at];
  const sign = direction === 'extend' ? 1 : -1;
  const coldK = 20 - condition.ambientC;
  const set = room.sealSet * (1 - Math.exp(-condition.stayDays / SET_DAYS));
  const seal = 1 + Math.max(-0.1, room.sealPerKelvin * coldK);
  const rolling = side.rollingNewtons * own.rolling * condition.load * (sign < 0 ? room.retractPart : 1);
  const wiper = side.wiperNewtons * own.wiper * seal;
  const greaseNewtons = side.greaseNewtons * own.grease * Math.exp(room.greasePerKelvin * coldK);
  const weight = side.roomKg * GRAVITY * condition.load * Math.sin(condition.tiltRadians);
  const bulb = (room.bulbNewtons / room.sides.length) * seal * (1 + set);
  const topper = condition.topper / room.sides.length;
  const turn = own.turnBump;
  const back: PushBack = { rubbing: 0, pushing: 0, drag: greaseNewtons / room.speed };

  return (positionMetres: number, goneMetres: number): PushBack => {
    const travel = room.travelMetres;
    let course = 1 + room.cantilever * ((2 * positionMetres) / travel - 1);
    for (const { part, lengthMetres, phase } of side.waves) {
      course += part * Math.sin((2 * Math.PI * positionMetres) / lengthMetres + phase);
    }
    if (condition.rollerFlat > 0) {
      course += condition.rollerFlat * Math.max(0, Math.cos((2 * Math.PI * positionMetres) / 0.14)) ** 6;
    }
    for (const { from, to, part } of own.stretches) {
      const inside = Math.min(positionMetres - from * travel, to * travel - positionMetres);
      course += part * Math.max(0, Math.min(1, 0.5 + inside / EDGE_METRES));
    }
    back.rubbing = Math.max(0.2, course) * rolling + wiper * (1 + 0.5 * Math.exp(-goneMetres / FOLD_METRES));
    back.rubbing += (BREAKAWAY_PART * rolling + 2 * set * bulb) * Math.exp(-goneMetres / BREAKAWAY_METRES);
    back.pushing =
      sign * topper * (room.topperNewtons + room.topperNewtonsPerMetre * positionMetres) - sign * weight;
    const near = Math.max(0, 1 - positionMetres / room.bulbMetres);
    const far = Math.max(0, 1 - (travel - positionMetres) / room.bulbMetres);
    back.pushing += sign * bulb * (Math.min(far, 1) - Math.min(near, 1));
    for (const { position, widthMetres, newtons, direction: only } of own.bumps) {
      if (only === null || only === direction) {
        back.rubbing += newtons * bell((positionMetres - position * travel) / widthMetres);
      }
    }
    if (turn !== null) {
      const turns = (positionMetres - turn.phaseMetres) / room.turnMetres;
      back.rubbing += turn.newtons * bell(((turns - Math.round(turns)) * room.turnMetres) / turn.widthMetres);
    }
    return back;
  };
}

function bell(widths: number): number {
  return Math.exp(-2 * widths * widths);
}
