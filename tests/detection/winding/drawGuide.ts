import type { Random } from '../../../server/demo/simulator/random.ts';
import { drawCourse } from './drawCourse.ts';
import type { RunningAim } from './drawRoom.ts';
import type { Guide } from './room.ts';

/** Rollers, shoes and seals that together need `newtons` at the room's ordinary speed. */
export function drawGuide(random: Random, aim: RunningAim, newtons: number): Guide {
  const viscousPart = random.uniform(0.04, 0.16);
  const wiperPart = random.uniform(0.06, 0.18);
  const coulombPart = 1 - viscousPart - wiperPart;
  const isRope = aim.drive === 'cable';
  return {
    coulombNewtons: newtons * coulombPart,
    wiperNewtons: newtons * wiperPart,
    viscousNewtonSecondsPerMetre: (newtons * viscousPart) / aim.metresPerSecond,
    stribeckPart: random.uniform(0.05, 0.4),
    stribeckMetresPerSecond: aim.metresPerSecond * random.uniform(0.08, 0.25),
    breakawayPart: random.uniform(0.05, 0.4),
    course: drawCourse(random),
    bulbNewtons: [newtons * random.uniform(0.15, 0.9), newtons * random.uniform(0.15, 0.9)],
    bulbMetres: random.uniform(0.008, 0.022),
    backlashMetres: isRope ? random.uniform(0.002, 0.012) : random.uniform(0.0005, 0.003),
    stiffnessNewtonsPerMetre:
      newtons / (isRope ? random.uniform(0.006, 0.02) : random.uniform(0.0005, 0.003)),
  };
}
