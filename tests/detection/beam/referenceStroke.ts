import type { Direction } from '../../../analysis/trace.ts';
import { type Condition, restCondition } from './condition.ts';
import { type Course, integrate, STEP_S, type Standing } from './integrate.ts';
import type { Plant } from './plant.ts';
import { Random } from './random.ts';

/** A quiet stroke in numbers. */
export interface Reference {
  /** Mean of each motor over the middle of its moving time, amperes. */
  readonly amps: readonly number[];
  /** Highest in the middle, above that mean, amperes. */
  readonly peaks: readonly number[];
  /** The first edge's end behind the second's, seconds. */
  readonly lagS: number;
  readonly seconds: number;
  /** Mean at the controller and at the battery, volts. */
  readonly controllerVolts: number;
  readonly batteryVolts: number;
  /** Part of the travel where it ended. */
  readonly endPart: number;
}

/** The fully retracted or extended room. */
export function standingAtEnd(plant: Plant, direction: Direction): Standing {
  return direction === 'extend'
    ? { edges: [0, 0], flank: -1 }
    : { edges: [plant.travelMetres, plant.travelMetres], flank: 1 };
}

/** A stroke at rest conditions with `change` applied. */
export function referenceStroke(
  plant: Plant,
  change: (condition: Condition) => void = () => undefined,
  direction: Direction = 'extend',
): Reference {
  const condition = restCondition(plant, 0, direction);
  change(condition);
  const course = integrate(plant, condition, standingAtEnd(plant, direction), new Random(1));
  return referenceOf(plant, course);
}

function referenceOf(plant: Plant, course: Course): Reference {
  const ends = course.amps.map((_, motor) =>
    course.amps.length === 1 ? Math.max(...course.endsS) : course.endsS[motor],
  );
  const last = Math.max(...ends);
  const amps = course.amps.map((list, motor) => meanOf(list, 0.12 * ends[motor], 0.9 * ends[motor]));
  const peaks = course.amps.map((list, motor) => {
    let most = 0;
    for (let step = Math.floor((0.12 * ends[motor]) / STEP_S); step < (0.88 * ends[motor]) / STEP_S; step++) {
      most = Math.max(most, list[step]);
    }
    return most - amps[motor];
  });
  return {
    amps,
    peaks,
    lagS: course.endsS[0] - course.endsS[1],
    seconds: last,
    controllerVolts: meanOf(course.controllerVolts, 0.1 * last, 0.9 * last),
    batteryVolts: meanOf(course.batteryVolts, 0.1 * last, 0.9 * last),
    endPart: (course.end.edges[0] + course.end.edges[1]) / 2 / plant.travelMetres,
  };
}

function meanOf(list: Float32Array, fromS: number, toS: number): number {
  const first = Math.floor(fromS / STEP_S);
  const last = Math.max(first + 1, Math.floor(toS / STEP_S));
  let sum = 0;
  for (let step = first; step < last; step++) sum += list[step];
  return sum / (last - first);
}
