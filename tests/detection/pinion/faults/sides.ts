import { labelOf } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Plant } from '../plant.ts';
import { dragFor, type FaultKind, isPair } from './fault.ts';

/** Metres by which one side leads when the room itself carries the usual force over. */
function softness({ sides, couplingNewtonsPerMetre }: Plant): number {
  return sides[0].newtons / couplingNewtonsPerMetre;
}

/** The room comes to hang on one gear, which spares the other. */
export const shareShift: FaultKind = {
  name: 'share-shift',
  fits: isPair,
  draw: ({ plant, random, onset }) => {
    const harder = random.integer(0, 1);
    const rise = random.uniform(0.15, 0.35);
    const spared = random.uniform(0.7, 1);
    const newtons = dragFor(plant, harder, rise);
    return {
      startsStroke: onset,
      label: labelOf(onset, {
        kind: 'uneven-sides',
        severity: rise,
        side: plant.sides[harder].name,
        alsoFits: ['rising-draw', 'late-side'],
      }),
      worsen: (condition) => {
        condition.sides[harder].dragNewtons += newtons;
        condition.sides[1 - harder].dragNewtons -= newtons * spared;
      },
    };
  },
};

/** Comes over many strokes as one side's rollers wear down. */
export const shareDrift: FaultKind = {
  name: 'share-drift',
  fits: isPair,
  draw: ({ plant, random, onset }) => {
    const harder = random.integer(0, 1);
    const rate = random.uniform(0.003, 0.008);
    return {
      startsStroke: onset,
      label: labelOf(onset, {
        kind: 'uneven-sides',
        severity: rate,
        side: plant.sides[harder].name,
        alsoFits: ['rising-draw', 'late-side'],
      }),
      worsen: (condition, _stroke, index) => {
        const newtons = dragFor(plant, harder, Math.min(0.4, rate * (index - onset + 1)));
        condition.sides[harder].dragNewtons += newtons;
        condition.sides[1 - harder].dragNewtons -= newtons * 0.8;
      },
    };
  },
};

export const shearedPin: FaultKind = {
  name: 'sheared-pin',
  fits: isPair,
  draw: ({ plant, random, onset }) => {
    const lost = random.integer(0, 1);
    return {
      startsStroke: onset,
      label: labelOf(onset, {
        kind: 'dropped-load',
        severity: 1,
        side: plant.sides[lost].name,
        alsoFits: ['uneven-sides', 'rising-draw', 'late-side'],
      }),
      worsen: (condition) => {
        condition.sides[lost].loose = { from: 0, to: 1 };
      },
    };
  },
};

/** A rack that has come away from its gear over a part of the travel. */
export const lostMesh: FaultKind = {
  name: 'lost-mesh',
  fits: isPair,
  draw: ({ plant, random, onset }) => {
    const lost = random.integer(0, 1);
    const from = random.uniform(0.1, 0.55);
    const to = Math.min(0.94, from + random.uniform(0.3, 0.5));
    return {
      startsStroke: onset,
      label: labelOf(onset, {
        kind: 'dropped-load',
        severity: to - from,
        side: plant.sides[lost].name,
        alsoFits: ['uneven-sides', 'rising-draw', 'late-side'],
      }),
      worsen: (condition) => {
        condition.sides[lost].loose = { from, to };
      },
    };
  },
};

/** A connector that burns away: its motor gets less and less of the supply. */
export const burntConnector: FaultKind = {
  name: 'burnt-connector',
  fits: (plant) => isPair(plant) && plant.controller.kind !== 'step' && softness(plant) > 0.9,
  draw: ({ plant, random, onset }) => {
    const late = random.integer(0, 1);
    const slower = random.uniform(0.14, 0.28);
    const over = random.uniform(5, 30);
    const { motor, runningAmps } = plant.sides[late];
    const speed = plant.travelMetres / plant.strokeS;
    const most = (slower * motor.voltsPerSpeed * speed) / runningAmps;
    return {
      startsStroke: onset,
      label: labelOf(onset, {
        kind: 'late-side',
        severity: slower * plant.strokeS,
        side: plant.sides[late].name,
        alsoFits: ['uneven-sides'],
      }),
      worsen: (condition, _stroke, index, chances) => {
        const grown = Math.min(1, (index - onset + 1) / over) * chances.uniform(0.8, 1.2);
        condition.sides[late].contactOhms += most * grown;
      },
    };
  },
};

export const slowRelay: FaultKind = {
  name: 'slow-relay',
  fits: (plant) => isPair(plant) && plant.controller.kind !== 'step' && softness(plant) > 0.3,
  draw: ({ plant, random, onset }) => {
    const late = random.integer(0, 1);
    const delayS = Math.max(0.8, random.uniform(0.06, 0.12) * plant.strokeS);
    return {
      startsStroke: onset,
      label: labelOf(onset, {
        kind: 'late-side',
        severity: delayS,
        side: plant.sides[late].name,
        alsoFits: ['uneven-sides'],
      }),
      worsen: (condition, _stroke, _index, chances) => {
        condition.sides[late].startDelayS = delayS * chances.uniform(0.8, 1.2);
      },
    };
  },
};
