import { labelOf, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { SideCondition } from '../condition.ts';
import type { Plant } from '../plant.ts';
import type { FaultKind } from './fault.ts';

/** A fault of one side's sensor. */
function sensor(
  name: string,
  fits: FaultKind['fits'],
  change: (own: SideCondition, amount: number, plant: Plant, side: number) => void,
  amount: (pick: { uniform(low: number, high: number): number; chance(part: number): boolean }) => number,
): FaultKind {
  return {
    name,
    fits,
    draw: ({ plant, random, onset }) => {
      const side = random.integer(0, plant.sides.length - 1);
      const severity = amount(random);
      return {
        startsStroke: onset,
        label: labelOf(onset, { kind: 'sensor-doubt', severity, side: plant.sides[side].name }),
        worsen: (condition) => change(condition.sides[side], severity, plant, side),
      };
    },
  };
}

const always = () => true;
const seesIdle = ({ logger }: Plant) => logger.beforeS > 0.3;

export const clampScale = sensor(
  'clamp-scale',
  always,
  (own, factor) => {
    own.gain *= factor;
    own.noiseAmps *= factor;
  },
  (random) => (random.chance(0.5) ? random.uniform(0.6, 0.78) : random.uniform(1.25, 1.5)),
);

export const clampOffset = sensor(
  'clamp-offset',
  seesIdle,
  (own, part, { sides }, side) => {
    own.offsetAmps += Math.sign(part) * Math.max(0.8, Math.abs(part) * sides[side].runningAmps);
  },
  (random) => random.uniform(0.15, 0.35) * (random.chance(0.5) ? 1 : -1),
);

export const clipping = sensor(
  'clipping',
  always,
  (own, part, { sides }, side) => {
    own.clipAmps = part * sides[side].runningAmps;
  },
  (random) => random.uniform(1.15, 1.6),
);

export const noisyWire = sensor(
  'noisy-wire',
  always,
  (own, part, { sides }, side) => {
    own.noiseAmps = Math.max(own.noiseAmps * 5, part * sides[side].runningAmps);
  },
  (random) => random.uniform(0.2, 0.4),
);

export const gaps = sensor(
  'gaps',
  always,
  (own, part) => {
    own.gapPart = part;
  },
  (random) => random.uniform(0.25, 0.5),
);

export const clampLeftOff = sensor(
  'clamp-left-off',
  always,
  (own) => {
    own.isOff = true;
  },
  () => 1,
);

/** A logger that counts its seconds wrongly, for all sides alike. */
export const wrongClock: FaultKind = {
  name: 'wrong-clock',
  fits: always,
  draw: ({ plant, random, onset }) => {
    const factor = random.chance(0.5) ? random.uniform(0.6, 0.75) : random.uniform(1.35, 1.6);
    return {
      startsStroke: onset,
      label: labelOf(onset, { kind: 'sensor-doubt', severity: factor, side: namedSide(plant, null) }),
      worsen: (condition) => {
        condition.clockFactor *= factor;
      },
    };
  },
};
