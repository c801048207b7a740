import { labelOf, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { PlannedStroke } from '../calendar.ts';
import { dragFor, type FaultKind, firstFrom, isPair, type Scene } from './fault.ts';

/** All sides alike: `part` of the running current more in a given stroke. */
function allSides(
  { plant }: Scene,
  startsStroke: number,
  severity: number,
  part: (stroke: PlannedStroke, age: number) => number,
): ReturnType<FaultKind['draw']> {
  return {
    startsStroke,
    label: labelOf(startsStroke, { kind: 'rising-draw', severity, side: namedSide(plant, null) }),
    worsen: (condition, stroke, index) => {
      const more = part(stroke, index - startsStroke);
      condition.sides.forEach((side, i) => {
        side.dragNewtons += dragFor(plant, i, more);
      });
    },
  };
}

/** One side alone. */
function oneSide(
  { plant, random, onset }: Scene,
  severity: number,
  part: (age: number, chance: (probability: number) => boolean) => number,
): ReturnType<FaultKind['draw']> {
  const at = random.integer(0, plant.sides.length - 1);
  return {
    startsStroke: onset,
    label: labelOf(onset, {
      kind: 'rising-draw',
      severity,
      side: plant.sides[at].name,
      alsoFits: isPair(plant) ? ['uneven-sides', 'late-side'] : [],
    }),
    worsen: (condition, _stroke, index, chances) => {
      const more = part(index - onset, (probability) => chances.chance(probability));
      condition.sides[at].dragNewtons += dragFor(plant, at, more);
    },
  };
}

const always = () => true;

export const frictionStep: FaultKind = {
  name: 'friction-step',
  fits: always,
  draw: (scene) => {
    const rise = scene.random.uniform(0.17, 0.5);
    return allSides(scene, scene.onset, rise, () => rise);
  },
};

export const frictionDrift: FaultKind = {
  name: 'friction-drift',
  fits: always,
  draw: (scene) => {
    const rate = scene.random.uniform(0.003, 0.007);
    return allSides(scene, scene.onset, rate, (_stroke, age) =>
      Math.min(0.7, Math.exp(rate * (age + 1)) - 1),
    );
  },
};

/** Worse all at once, then for a while not at all. */
export const frictionBursts: FaultKind = {
  name: 'friction-bursts',
  fits: always,
  draw: (scene) => {
    const { random } = scene;
    let at = 0;
    const bursts = Array.from({ length: 5 }, () => {
      const burst = { fromAge: at, rise: random.uniform(0.06, 0.13) };
      at += random.integer(5, 16);
      return burst;
    });
    const sum = (age: number) =>
      bursts.filter(({ fromAge }) => fromAge <= age).reduce((total, { rise }) => total + rise, 0);
    return allSides(scene, scene.onset, sum(Number.POSITIVE_INFINITY), (_stroke, age) => sum(age));
  },
};

/** A wiper seal that grips in the wet only. */
export const wetDrag: FaultKind = {
  name: 'wet-drag',
  fits: (_plant, planned) => planned.filter(({ isWet }) => isWet).length > 0.28 * planned.length,
  draw: (scene) => {
    const rise = scene.random.uniform(0.35, 0.6);
    const from = firstFrom(scene.planned, scene.onset, ({ isWet }) => isWet);
    return allSides(scene, from, rise, ({ isWet }) => (isWet ? rise : 0));
  },
};

/** An awning's spring or a curled floor edge that holds the room one way only. */
export const oneWayDrag: FaultKind = {
  name: 'one-way-drag',
  fits: always,
  draw: (scene) => {
    const rise = scene.random.uniform(0.25, 0.5);
    const way = scene.random.pick(['extend', 'retract'] as const);
    const from = firstFrom(scene.planned, scene.onset, ({ direction }) => direction === way);
    return allSides(scene, from, rise, ({ direction }) => (direction === way ? rise : 0));
  },
};

export const bearingBlock: FaultKind = {
  name: 'bearing-block',
  fits: isPair,
  draw: (scene) => {
    const rise = scene.random.uniform(0.25, 0.6);
    return oneSide(scene, rise, () => rise);
  },
};

/** A motor's brake that lets go fully on some days only. */
export const brakeDrag: FaultKind = {
  name: 'brake-drag',
  fits: always,
  draw: (scene) => {
    const rise = scene.random.uniform(0.3, 0.6);
    return oneSide(scene, rise, (_age, chance) => (chance(0.65) ? rise : 0.05));
  },
};

/** Magnets that have lost strength: more current for the same force, and more speed for the same supply. */
export const weakMagnet: FaultKind = {
  name: 'weak-magnet',
  fits: always,
  draw: ({ plant, random, onset }) => {
    const at = random.integer(0, plant.sides.length - 1);
    const factor = random.uniform(0.68, 0.8);
    return {
      startsStroke: onset,
      label: labelOf(onset, {
        kind: 'rising-draw',
        severity: 1 / factor - 1,
        side: plant.sides[at].name,
        alsoFits: isPair(plant) ? ['uneven-sides', 'late-side'] : [],
      }),
      worsen: (condition) => {
        condition.sides[at].magnetFactor = factor;
      },
    };
  },
};

/** Lubricated, better, and then worse faster than ever before. */
export const dryRebound: FaultKind = {
  name: 'dry-rebound',
  fits: always,
  draw: ({ plant, random, onset }) => {
    const before = random.uniform(0.0001, 0.0003);
    const after = random.uniform(0.004, 0.009);
    const eased = random.uniform(0.75, 0.85);
    const most = random.uniform(1.25, 1.4);
    const says = onset + Math.ceil(Math.log(1.05) / after);
    return {
      startsStroke: onset,
      label: labelOf(says, {
        kind: 'draw-rebound',
        severity: after,
        side: namedSide(plant, null),
        alsoFits: ['rising-draw'],
      }),
      services: [
        { beforeStroke: onset, kind: 'lubricated', side: null, frictionFactor: 1, freshMotor: false },
      ],
      worsen: (condition, _stroke, index) => {
        const age = index - onset;
        const grown = Math.exp(before * Math.min(index, onset));
        const factor = grown * (age < 0 ? 1 : eased * Math.min(most, Math.exp(after * age)));
        condition.sides.forEach((side, i) => {
          side.dragNewtons += dragFor(plant, i, factor - 1);
        });
      },
    };
  },
};
