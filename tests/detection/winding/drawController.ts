import type { Random } from '../../../server/demo/simulator/random.ts';
import type { RunningAim } from './drawRoom.ts';
import type { RoomNeeds } from './needs.ts';
import type { Controller, Ending, Motor, Pacing } from './room.ts';

/** What switches the motors: a relay under the hand, or electronics that keep them in step and cut them at the end. */
export function drawController(random: Random, aim: RunningAim, motor: Motor, needs: RoomNeeds): Controller {
  const pacing = drawPacing(random, aim, needs);
  const ending = random.pick<Ending>(
    needs.endings ??
      (pacing === 'none' ? ['hand', 'hand', 'limit-switch'] : ['hand', 'current-limit', 'current-limit']),
  );
  const stallAmps = (1.05 * aim.nominalVolts) / (motor.ohmsAt20C + motor.leadOhms);
  return {
    pacing,
    ending,
    softStartS: pacing !== 'none' && random.chance(0.5) ? random.uniform(0.3, 1) : 0,
    limitAmps: stallAmps * random.uniform(0.5, 0.62),
    limitS: random.uniform(0.12, 0.35),
    leadMetres: pacing === 'pause' ? random.uniform(0.005, 0.01) : random.uniform(0.008, 0.02),
  };
}

function drawPacing(random: Random, aim: RunningAim, needs: RoomNeeds): Pacing {
  if (aim.sides === 1) return 'none';
  return random.pick<Pacing>(needs.pacings ?? ['none', 'none', 'pwm', 'pwm', 'pause']);
}
