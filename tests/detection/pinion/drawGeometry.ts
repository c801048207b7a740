import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Geometry } from './plant.ts';

/** Resistance along the travel; its sliding parts sum to 1 in the middle of the travel. */
export function drawGeometry(random: Random): Geometry {
  const wiper = random.uniform(0.1, 0.25);
  const viscous = random.uniform(0.03, 0.12);
  const topper = random.chance(0.5) ? random.uniform(0.02, 0.08) : 0;
  // Far enough from one another not to add up.
  const seams = Array.from({ length: random.integer(0, 3) }, (_, nth) => ({
    position: 0.14 + 0.25 * nth + random.uniform(0, 0.2),
    width: random.uniform(0.01, 0.04),
    height: random.uniform(0.02, 0.08),
  }));
  return {
    rolling: 1 - wiper - viscous,
    overhang: random.uniform(-0.1, 0.25),
    wiper,
    topper,
    topperRise: topper * random.uniform(0.5, 1.5),
    sealIn: random.uniform(0.2, 0.9),
    sealOut: random.uniform(0.2, 0.9),
    sealPart: random.uniform(0.02, 0.06),
    ramp: random.chance(0.3) ? random.uniform(0.15, 0.35) : 0,
    rampFrom: random.uniform(0.8, 0.9),
    viscous,
    toothRipple: random.uniform(0.005, 0.03),
    turnRipple: random.uniform(0.005, 0.025),
    turnPhase: random.uniform(0, 2 * Math.PI),
    seams,
  };
}
