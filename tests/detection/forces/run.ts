import type { Random } from '../../../server/demo/simulator/random.ts';
import type { ForcesCondition } from './condition.ts';
import { loadAt } from './load.ts';
import { type ForcesRoom, USUAL_VOLTS } from './room.ts';

/** The longest step of the solver. */
const STEP_S = 0.004;
/** A stroke that has not come to its end is given up after so many times its usual duration. */
const GIVES_UP = 4;

/** The true currents and the supply of a stroke at the logger's samples. */
export interface Run {
  readonly amps: readonly Float64Array[];
  readonly volts: Float64Array;
  readonly length: number;
}

interface Moving {
  position: number;
  /** Where it would be had its gear not slipped: what a controller that counts turns knows. */
  turned: number;
  speed: number;
  amps: number;
  /** When it came to its end; negative: not yet. */
  endedS: number;
  off: boolean;
}

/** Solves both motors' circuits and masses by backward Euler steps, and reads them off at the logger's samples. */
export function runForces(room: ForcesRoom, condition: ForcesCondition, random: Random): Run {
  const heading = Math.sign(condition.to - condition.from);
  const sampleS = 1 / condition.rateHz;
  const steps = Math.ceil(sampleS / STEP_S);
  const most = Math.ceil((GIVES_UP * room.travelS + 10) * condition.rateHz);
  const amps = room.sides.map(() => new Float64Array(most));
  const volts = new Float64Array(most);
  const moving = room.sides.map((): Moving => {
    return { position: condition.from, turned: condition.from, speed: 0, amps: 0, endedS: -1, off: false };
  });
  const pauses = [...condition.pauses];
  let pausedUntilS = 0;
  let timeS = random.uniform(0, sampleS) - room.restS.before;
  let endedS = -1;
  let length = 0;
  for (; length < most; length++) {
    for (let step = 0; step < steps; step++, timeS += sampleS / steps) {
      if (pauses.length > 0 && heading * (moving[0].position - pauses[0].position) >= 0) {
        pausedUntilS = timeS + pauses[0].durationS;
        pauses.shift();
      }
      const total = moving.reduce((sum, side) => sum + side.amps, 0);
      const supplyVolts = condition.openVolts - condition.supplyOhms * total;
      const on = timeS >= 0 && timeS >= pausedUntilS;
      volts[length] = supplyVolts;
      for (const [index, side] of moving.entries()) {
        const drive = on && !side.off ? supplyVolts * trimmed(room, moving, index, heading) : 0;
        stepSide(room, condition, moving, index, drive, heading, sampleS / steps);
        amps[index][length] = side.amps;
        if (side.endedS < 0 && heading * (side.position - condition.to) >= 0) side.endedS = timeS;
        if (side.endedS >= 0 && timeS >= side.endedS + condition.holdS) side.off = true;
      }
    }
    if (endedS < 0 && moving.every((side) => side.off && side.amps < 0.01)) endedS = timeS;
    if (endedS >= 0 && timeS >= endedS + room.restS.after) break;
  }
  return { amps: amps.map((all) => all.subarray(0, length)), volts: volts.subarray(0, length), length };
}

/** Part of the supply that the controller leaves a side which leads, while both are on their way. */
function trimmed(room: ForcesRoom, moving: readonly Moving[], index: number, heading: number): number {
  if (room.trim === 0 || moving.some((side) => side.endedS >= 0)) return 1;
  const lead = heading * (moving[index].turned - moving[1 - index].turned);
  return 1 - Math.min(0.4, Math.max(0, room.trim * lead));
}

function stepSide(
  room: ForcesRoom,
  condition: ForcesCondition,
  moving: readonly Moving[],
  index: number,
  drive: number,
  heading: number,
  stepS: number,
): void {
  const side = moving[index];
  const own = room.sides[index];
  const load = loadAt(room, condition, index, side.position, side.speed);
  const lead = moving.length === 2 ? heading * (side.position - moving[1 - index].position) : 0;
  const past = Math.max(0, heading * (side.position - condition.to));
  const end = (past / room.endGives) * (USUAL_VOLTS / own.ohms);
  const against = load.amps + room.boxAmps * Math.tanh(lead / 0.01) + (condition.holdS > 0 ? end : 0);
  const ohms = own.ohms * (1 + 0.00393 * (condition.ambientC - 20));
  if (drive === 0) {
    // The switch is open: the current has nowhere to go, and friction stops the room.
    side.amps = 0;
    side.speed = Math.max(0, side.speed - (against / own.inertia) * stepS);
  } else {
    const mass = own.inertia / stepS + load.viscous;
    const coasting = ((own.inertia / stepS) * side.speed - against) / mass;
    const inductive = own.henries / stepS;
    const amps =
      (drive + inductive * side.amps - own.backVoltS * coasting) / (inductive + ohms + own.backVoltS / mass);
    const speed = coasting + amps / mass;
    if (speed > 0) Object.assign(side, { amps, speed });
    else Object.assign(side, { amps: (drive + inductive * side.amps) / (inductive + ohms), speed: 0 });
  }
  side.turned += heading * side.speed * stepS;
  side.position += heading * side.speed * (1 - condition.slip[index]) * stepS;
}
