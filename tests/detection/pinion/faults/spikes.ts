import type { SpikePattern } from '../../../../analysis/warning.ts';
import { labelOf } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Random } from '../../../../server/demo/simulator/random.ts';
import type { Bump } from '../condition.ts';
import type { Plant } from '../plant.ts';
import { dragFor, type FaultKind, firstFrom, type Scene, stallAmps } from './fault.ts';

/** Strongest peak that does not stall the motor, part of its stall current. */
const STALLS_PART = 0.5;

/** A peak that a technician would see in the trace: well above running current and noise. */
function drawPeak({ plant, random }: Scene, side: number): Omit<Bump, 'position'> {
  const { runningAmps } = plant.sides[side];
  const { logger, controller, travelMetres, strokeS, takeUpMetres } = plant;
  const most =
    Math.min(STALLS_PART * stallAmps(plant, side), 0.85 * (controller.limitAmps ?? 1e9)) - runningAmps;
  const wanted = Math.max(random.uniform(0.5, 1.1) * runningAmps, 9 * logger.noiseAmps);
  const lastS = Math.max(random.uniform(0.15, 0.4), 3 / logger.rateHz);
  return {
    newtons: dragFor(plant, side, Math.min(most, wanted) / runningAmps),
    // What is narrower is swallowed by the give of ropes and teeth.
    widthMetres: Math.max((lastS * travelMetres) / strokeS, 3 * takeUpMetres),
  };
}

function spikes(
  scene: Scene,
  pattern: SpikePattern,
  position: number | null,
  startsStroke: number,
  bumps: (peak: Omit<Bump, 'position'>, age: number, random: Random, direction: string) => Bump[],
): ReturnType<FaultKind['draw']> {
  const { plant, random } = scene;
  const side = random.integer(0, plant.sides.length - 1);
  const peak = drawPeak(scene, side);
  const severity = peak.newtons / dragFor(plant, side, 1);
  return {
    startsStroke,
    label: labelOf(startsStroke, {
      kind: 'stall-spike',
      severity,
      side: plant.sides[side].name,
      pattern,
      position,
    }),
    worsen: (condition, { direction }, index, chances) => {
      condition.sides[side].bumps.push(...bumps(peak, index - startsStroke, chances, direction));
    },
  };
}

const always = () => true;
const turns = ({ travelMetres, turnMetres }: Plant) => travelMetres / turnMetres;
/** Enough turns to tell them apart, each longer than a peak. */
const turnsEnough = (plant: Plant) => turns(plant) > 3 && plant.strokeS / turns(plant) > 1;

function onEveryTurn({ turnMetres, travelMetres }: Plant, from: number): number[] {
  const each = turnMetres / travelMetres;
  const all = Array.from({ length: Math.floor(1 / each) + 1 }, (_, turn) => (from + turn) * each);
  return all.filter((position) => position < 1);
}

export const proudFastener: FaultKind = {
  name: 'proud-fastener',
  fits: always,
  draw: (scene) => {
    const position = scene.random.uniform(0.15, 0.85);
    return spikes(scene, 'same-place', position, scene.onset, (peak) => [{ ...peak, position }]);
  },
};

/** A loose one that stands up in some strokes only. */
export const rockingFastener: FaultKind = {
  name: 'rocking-fastener',
  fits: always,
  draw: (scene) => {
    const position = scene.random.uniform(0.15, 0.85);
    return spikes(scene, 'same-place', position, scene.onset, (peak, _age, random) =>
      random.chance(0.6) ? [{ ...peak, position }] : [],
    );
  },
};

/** A burr that catches one way. */
export const burr: FaultKind = {
  name: 'burr',
  fits: always,
  draw: (scene) => {
    const position = scene.random.uniform(0.15, 0.85);
    const way = scene.random.pick(['extend', 'retract']);
    const from = firstFrom(scene.planned, scene.onset, ({ direction }) => direction === way);
    return spikes(scene, 'same-place', position, from, (peak, _age, _random, direction) =>
      direction === way ? [{ ...peak, position }] : [],
    );
  },
};

export const brokenTooth: FaultKind = {
  name: 'broken-tooth',
  fits: turnsEnough,
  draw: (scene) => {
    const places = onEveryTurn(scene.plant, scene.random.uniform(0, 1));
    return spikes(scene, 'once-per-turn', null, scene.onset, (peak) =>
      places.map((position) => ({ ...peak, position })),
    );
  },
};

export const wornTooth: FaultKind = {
  name: 'worn-tooth',
  fits: turnsEnough,
  draw: (scene) => {
    const places = onEveryTurn(scene.plant, scene.random.uniform(0, 1));
    const wearsOver = scene.random.uniform(25, 60);
    return spikes(scene, 'once-per-turn', null, scene.onset, (peak, age) => {
      const newtons = peak.newtons * Math.min(1, (age + 1) / wearsOver);
      return places.map((position) => ({ ...peak, newtons, position }));
    });
  },
};

export const skippingGear: FaultKind = {
  name: 'skipping-gear',
  fits: always,
  draw: (scene) => {
    const part = scene.random.uniform(0.65, 1);
    return spikes(scene, 'scattered', null, scene.onset, (peak, _age, random) =>
      random.chance(part)
        ? Array.from({ length: random.integer(2, 4) }, () => ({
            ...peak,
            position: random.uniform(0.1, 0.9),
          }))
        : [],
    );
  },
};

/** Brushes that lose the commutator for a moment: the current breaks off and comes back as a small inrush. */
export const sparkingBrushes: FaultKind = {
  name: 'sparking-brushes',
  fits: ({ logger }) => logger.rateHz >= 40 && logger.noiseAmps < 0.15,
  draw: ({ plant, random, onset }) => {
    const side = random.integer(0, plant.sides.length - 1);
    return {
      startsStroke: onset,
      label: labelOf(onset, {
        kind: 'stall-spike',
        severity: 1,
        side: plant.sides[side].name,
        pattern: 'scattered',
        alsoFits: ['sensor-doubt'],
      }),
      worsen: (condition, _stroke, _index, chances) => {
        condition.sides[side].sparks = Array.from({ length: chances.integer(2, 5) }, () => ({
          atS: chances.uniform(0.1, 0.9) * plant.strokeS,
          lastS: chances.uniform(0.05, 0.14),
        }));
      },
    };
  },
};
