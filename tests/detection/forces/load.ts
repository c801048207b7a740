import type { ForcesCondition } from './condition.ts';
import type { ForcesRoom } from './room.ts';

/** Teeth that pass while the gear turns once. */
const TEETH_A_TURN = 15;

/** What a side must push against at a place and speed: a constant part and one that grows with the speed. */
export interface Load {
  readonly amps: number;
  readonly viscous: number;
}

/** The load of one side, from the forces that act on it: friction with its breakaway, teeth, seals, slack and tilt. */
export function loadAt(
  room: ForcesRoom,
  condition: ForcesCondition,
  side: number,
  position: number,
  speed: number,
): Load {
  const own = room.sides[side];
  const { direction, ambientC } = condition;
  const colder = 20 - ambientC;
  const x = Math.min(1, Math.max(0, position));
  let factor = condition.friction[side];
  for (const shape of condition.shapes) factor *= shape(side, x);
  const breakaway = 1 + own.stribeck.part * Math.exp(-speed / (own.stribeck.speedPart * room.usualSpeed));
  const turned = (2 * Math.PI * x) / room.turn;
  const teeth =
    1 + own.toothRipple * Math.sin(TEETH_A_TURN * turned) + own.turnRipple * Math.sin(turned + own.phase);
  const toEnd = Math.min(x, 1 - x) / room.seal.width;
  const seal = 1 + room.seal.part * Math.exp(-toEnd);
  const gone = direction === 'extend' ? x : 1 - x;
  const slack = gone < room.slack ? 0.3 : 1;
  const coulomb =
    knotAt(own.coulombAmps[direction], x) * breakaway * teeth * seal * (1 + room.coldCoulomb * colder);
  const tilt = direction === 'extend' ? condition.tiltAmps[side] : -condition.tiltAmps[side];
  // A worm holds what would run by itself: tilt never drives the motor.
  const carried = Math.max(0, (coulomb * factor + tilt) * slack);
  const viscous = (own.viscousAmps / room.usualSpeed) * factor * Math.exp(room.coldViscous * colder);
  return { amps: own.idleAmps * condition.idle[side] + carried, viscous };
}

function knotAt(knots: readonly number[], x: number): number {
  const place = x * (knots.length - 1);
  const below = Math.min(knots.length - 2, Math.floor(place));
  return knots[below] + (place - below) * (knots[below + 1] - knots[below]);
}
