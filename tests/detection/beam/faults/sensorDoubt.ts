import { labelOf, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { ClampState, Condition } from '../condition.ts';
import type { Plant } from '../plant.ts';
import type { Random } from '../random.ts';
import type { FaultKind } from '../story.ts';

type Spoil = (clamp: ClampState, own: Random) => void;

/** A fault of one clamp; `draw` gives what it does and how bad it is. */
function clampFault(
  name: string,
  draw: (plant: Plant, motor: number, random: Random) => [Spoil, number],
): FaultKind {
  return {
    name,
    wants: {},
    draw(plant, _, onset, random) {
      const motor = random.whole(0, plant.motors.length - 1);
      const [spoil, severity] = draw(plant, motor, random);
      const label = labelOf(onset, { kind: 'sensor-doubt', side: plant.facts.sides[motor], severity });
      const apply = (condition: Condition, own: Random) => spoil(condition.logger.clamps[motor], own);
      return { name, label, startsStroke: onset, services: [], apply };
    },
  };
}

const looseClamp = clampFault('loose-clamp', (_, _motor, random) => {
  const scale = random.between(0.55, 0.78);
  return [
    (clamp, own) => {
      clamp.scale *= scale * (1 + 0.03 * own.normal());
      clamp.noiseFactor *= 1.4;
    },
    1 - scale,
  ];
});

const otherRange = clampFault('other-range', (_, _motor, random) => {
  const scale = random.chance(0.5) ? random.between(1.35, 2) : random.between(0.5, 0.72);
  return [
    (clamp) => {
      clamp.scale *= scale;
    },
    Math.abs(scale - 1),
  ];
});

const clipped = clampFault('clipped', (plant, motor, random) => {
  const part = random.between(1.1, 1.4);
  return [
    (clamp) => {
      clamp.clipAmps = plant.nominal.amps[motor] * part;
    },
    part,
  ];
});

const shiftedZero = clampFault('shifted-zero', (plant, motor, random) => {
  const amps =
    Math.max(1, plant.nominal.amps[motor] * random.between(0.2, 0.4)) * (random.chance(0.5) ? 1 : -1);
  return [
    (clamp) => {
      clamp.offsetAmps += amps;
    },
    Math.abs(amps),
  ];
});

const gaps = clampFault('gaps', (_, _motor, random) => {
  const part = random.between(0.25, 0.5);
  return [
    (clamp) => {
      clamp.lostPart = part;
    },
    part,
  ];
});

const noisy = clampFault('noisy', (plant, motor, random) => {
  const amps = Math.max(8 * plant.logger.noiseAmps, plant.nominal.amps[motor] * random.between(0.2, 0.4));
  return [
    (clamp) => {
      clamp.noiseFactor = amps / plant.logger.noiseAmps;
    },
    amps,
  ];
});

const leftOff = clampFault('clamp-left-off', () => [
  (clamp) => {
    clamp.left = true;
  },
  1,
]);

/** The logger's clock has changed its pace: everything comes at another time. */
const wrongClock: FaultKind = {
  name: 'wrong-clock',
  wants: {},
  draw(plant, _, onset, random) {
    const factor = random.chance(0.5) ? random.between(1.4, 1.8) : random.between(0.55, 0.7);
    const label = labelOf(onset, {
      kind: 'sensor-doubt',
      side: namedSide(plant, null),
      severity: Math.abs(factor - 1),
    });
    return {
      name: 'wrong-clock',
      label,
      startsStroke: onset,
      services: [],
      apply(condition) {
        condition.logger.clockFactor = factor;
      },
    };
  },
};

export const SENSOR_DOUBT = [looseClamp, otherRange, clipped, shiftedZero, gaps, noisy, leftOff, wrongClock];
