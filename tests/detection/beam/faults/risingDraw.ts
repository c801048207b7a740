import { labelOf, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Condition } from '../condition.ts';
import type { Plant } from '../plant.ts';
import { type Reference, referenceStroke } from '../referenceStroke.ts';
import type { FaultKind } from '../story.ts';
import { solveSize } from './solve.ts';

/** How much each motor's current rises, parts. */
export function risesOf(before: Reference, after: Reference): number[] {
  return after.amps.map((amps, motor) => amps / before.amps[motor] - 1);
}

export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

const dryBoth = (size: number) => (condition: Condition) => {
  for (const edge of condition.edges) edge.coulomb *= 1 + size;
};
const drySide = (edge: number, size: number) => (condition: Condition) => {
  condition.edges[edge].coulomb *= 1 + size;
};

/** The other side may rise by this part of the faulty side's rise before the fault is no longer one side's. */
const OTHER_PART = 0.25;

/** The film of grease on both rails is gone from one stroke to the next. */
const filmDry: FaultKind = {
  name: 'film-dry',
  wants: {},
  draw(plant, _, onset, random) {
    const before = referenceStroke(plant);
    const rise = random.between(0.15, 0.4);
    const measure = (size: number) => meanOf(risesOf(before, referenceStroke(plant, dryBoth(size))));
    const size = solveSize(measure, rise, rise * 1.5, 0);
    if (size === null) return null;
    const label = labelOf(onset, { kind: 'rising-draw', side: namedSide(plant, null), severity: rise });
    return { name: 'film-dry', label, startsStroke: onset, services: [], apply: dryBoth(size) };
  },
};

function sideOnly(plant: Plant, edge: number, rise: number): number | null {
  const before = referenceStroke(plant);
  const rises = (size: number) => risesOf(before, referenceStroke(plant, drySide(edge, size)));
  const size = solveSize((each) => rises(each)[edge], rise, rise * 1.5, 0);
  return size === null || Math.abs(rises(size)[1 - edge]) > OTHER_PART * rise ? null : size;
}

/** One rail ran dry; the other is as it was. */
const filmDrySide: FaultKind = {
  name: 'film-dry-side',
  wants: { couplings: ['pulses', 'pulses', 'loose'] },
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const rise = random.between(0.15, 0.4);
    const size = sideOnly(plant, edge, rise);
    if (size === null) return null;
    const label = labelOf(onset, {
      kind: 'rising-draw',
      alsoFits: ['uneven-sides'],
      side: plant.facts.sides[edge],
      severity: rise,
    });
    return { name: 'film-dry-side', label, startsStroke: onset, services: [], apply: drySide(edge, size) };
  },
};

/** No drift goes further than this, natural logarithm of the current. */
const FURTHEST = 0.5;

/** Wear of both rails: a steady rise of the current. */
const drift: FaultKind = {
  name: 'drift',
  wants: {},
  draw(plant, _, onset, random) {
    const rate = random.between(0.003, 0.006);
    const before = referenceStroke(plant);
    const slope = meanOf(risesOf(before, referenceStroke(plant, dryBoth(0.5)))) / 0.5;
    if (!(slope > 0.3)) return null;
    const label = labelOf(onset, { kind: 'rising-draw', side: namedSide(plant, null), severity: rate });
    return {
      name: 'drift',
      label,
      startsStroke: onset,
      services: [],
      apply(condition) {
        const come = Math.exp(Math.min(FURTHEST, rate * (condition.index - onset + 1))) - 1;
        dryBoth(come / slope)(condition);
      },
    };
  },
};

/** Wear of one rail. */
const driftSide: FaultKind = {
  name: 'drift-side',
  wants: { couplings: ['pulses', 'pulses', 'loose'] },
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const rate = random.between(0.003, 0.007);
    const size = sideOnly(plant, edge, 0.3);
    if (size === null) return null;
    const slope = 0.3 / size;
    const label = labelOf(onset, {
      kind: 'rising-draw',
      alsoFits: ['uneven-sides'],
      side: plant.facts.sides[edge],
      severity: rate,
    });
    return {
      name: 'drift-side',
      label,
      startsStroke: onset,
      services: [],
      apply(condition) {
        const come = Math.exp(Math.min(FURTHEST, rate * (condition.index - onset + 1))) - 1;
        drySide(edge, come / slope)(condition);
      },
    };
  },
};

/** The other motor's change below which the load has moved rather than risen. */
const SHEDS = -0.06;

/** A fault of one motor; `change` by size, and the size to try first for a rise. */
function motorFault(
  name: string,
  changeOf: (plant: Plant, motor: number) => (size: number) => (condition: Condition) => void,
  guess: number,
  most: number,
): FaultKind {
  return {
    name,
    wants: {},
    draw(plant, _, onset, random) {
      const motor = random.whole(0, plant.motors.length - 1);
      const rise = random.between(0.15, 0.35);
      const change = changeOf(plant, motor);
      const before = referenceStroke(plant);
      const rises = (size: number) => risesOf(before, referenceStroke(plant, change(size)));
      const size = solveSize((each) => rises(each)[motor], rise, rise * guess, 0);
      if (size === null || size > most) return null;
      const two = plant.motors.length === 2;
      // In a stiff room what one motor takes the other sheds: then it is the share that has moved.
      const sheds = two && rises(size)[1 - motor] < SHEDS;
      const label = labelOf(onset, {
        kind: sheds ? 'uneven-sides' : 'rising-draw',
        alsoFits: sheds ? ['rising-draw'] : two ? ['uneven-sides'] : [],
        side: plant.facts.sides[motor],
        severity: rise,
      });
      return { name, label, startsStroke: onset, services: [], apply: change(size) };
    },
  };
}

/** Shorted turns lack in resistance and in torque, and brake: the voltage of their part drives a current in that part. */
const shortedTurns = motorFault(
  'shorted-turns',
  (plant, motor) => (part) => (condition) => {
    const { emf, windingOhm, efficiency } = plant.motors[motor];
    condition.motors[motor].emfFactor *= 1 - part;
    condition.motors[motor].windingFactor *= 1 - part;
    condition.motors[motor].brakes += (efficiency * part * emf * emf) / windingOhm;
  },
  0.3,
  0.3,
);

/** Magnets that have lost some strength, as after a long hot stall: more current for the same force, at more speed. */
const weakMagnets = motorFault(
  'weak-magnets',
  (_, motor) => (part) => (condition) => {
    condition.motors[motor].emfFactor *= 1 - part;
  },
  0.7,
  0.35,
);

export const RISING_DRAW = [filmDry, filmDrySide, drift, driftSide, shortedTurns, weakMagnets];
