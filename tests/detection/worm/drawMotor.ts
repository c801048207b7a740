import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Motor } from './room.ts';
import { drivingEffort, flankFriction, type Screw } from './screw.ts';

/** What a motor is chosen for. */
export interface Duty {
  readonly volts: number;
  readonly runAmps: number;
  /** Stall current over running current. */
  readonly reserve: number;
  readonly metresPerS: number;
}

/** A worm that a speed suits: its flanks float well below the running speed. */
export function drawScrew(random: Random, metresPerS: number): Screw {
  return {
    lead: random.uniform(0.07, 0.15),
    filmFriction: random.uniform(0.035, 0.075),
    contactFriction: random.uniform(0.03, 0.1),
    liftMetresPerS: metresPerS * random.uniform(0.15, 0.5),
  };
}

/** A motor that turns at its duty's speed under its duty's current, and the push that it then gives. */
export function drawMotor(random: Random, duty: Duty, screw: Screw): { motor: Motor; runNewtons: number } {
  const ohm = duty.volts / (duty.reserve * duty.runAmps);
  const newtonsPerAmp = (duty.volts - duty.runAmps * ohm) / duty.metresPerS;
  const idleAmps = duty.runAmps * random.uniform(0.12, 0.3);
  const effort = drivingEffort(screw, flankFriction(screw, duty.metresPerS, 1));
  return {
    runNewtons: (newtonsPerAmp * (duty.runAmps - idleAmps)) / effort,
    motor: {
      ohm,
      newtonsPerAmp,
      idleAmps,
      massKg: (random.uniform(0.04, 0.14) * newtonsPerAmp * newtonsPerAmp) / ohm,
      joulesPerDegree: (duty.runAmps ** 2 * ohm) / random.uniform(0.15, 0.5),
      screw,
    },
  };
}
