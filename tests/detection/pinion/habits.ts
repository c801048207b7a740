import type { ServiceKind } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Plant } from './plant.ts';

/** Work on a room, and what it left behind. */
export interface PlannedService {
  readonly beforeStroke: number;
  readonly kind: ServiceKind;
  readonly side: string | null;
  /** On the friction of all strokes after. */
  readonly frictionFactor: number;
  readonly freshMotor: boolean;
}

/** What a healthy life brings to a room. */
export interface Habits {
  readonly services: readonly PlannedService[];
  /** Friction of a new room over what it is run in to. */
  readonly newPart: number;
  /** A slow wave of the friction, and of the share of the first side: part, strokes a wave. */
  readonly wander: number;
  readonly wanderStrokes: number;
  readonly wetPart: number;
  readonly storagePart: number;
  readonly pausePart: number;
  readonly jogPart: number;
  readonly latePart: number;
  readonly otherUserPart: number;
  readonly changeoverPart: number;
  /** Chance of a frozen seal below freezing. */
  readonly icePart: number;
  readonly rezeroes: readonly { readonly fromStroke: number; readonly amps: number }[];
  readonly newLogger: {
    readonly fromStroke: number;
    readonly rateHz: number;
    readonly resolutionAmps: number;
  } | null;
  readonly newBattery: {
    readonly fromStroke: number;
    readonly volts: number;
    readonly ohmsPart: number;
  } | null;
  /** Water in the awning over the room: chance in the wet, and how heavy. */
  readonly pondPart: number;
  /** Chance of a pebble on the rail. */
  readonly gritPart: number;
}

/** `faultFrom`: services keep away from a fault that begins there; null: none does. */
export function drawHabits(plant: Plant, strokes: number, faultFrom: number | null, random: Random): Habits {
  const { logger, supply, sides } = plant;
  const amps = Math.min(...sides.map(({ runningAmps }) => runningAmps));
  const hidden = logger.beforeS === 0 && logger.afterS === 0;
  const last = faultFrom === null ? strokes - 10 : faultFrom - 28;
  const sometimes = (chance: number, low: number, high: number) =>
    random.chance(chance) ? random.uniform(low, high) : 0;
  return {
    services: last > 12 ? drawServices(random, last, plant) : [],
    newPart: sometimes(0.2, 0.02, 0.08),
    wander: random.uniform(0, 0.018),
    wanderStrokes: random.uniform(40, 200),
    wetPart: random.uniform(-0.03, 0.04),
    storagePart: random.uniform(0, 0.08),
    pausePart: sometimes(0.4, 0.01, 0.05),
    jogPart: sometimes(0.4, 0.02, 0.2),
    latePart: sometimes(0.3, 0.01, 0.06),
    otherUserPart: sometimes(0.5, 0.02, 0.15),
    changeoverPart: sometimes(0.2, 0.01, 0.04),
    icePart: sometimes(0.5, 0.2, 0.7),
    rezeroes: Array.from({ length: random.chance(0.4) ? random.integer(1, 3) : 0 }, () => ({
      fromStroke: random.integer(5, strokes),
      amps: random.uniform(-1, 1) * (hidden ? 0.01 * amps : Math.min(0.25, 0.06 * amps)),
    })),
    newLogger: random.chance(0.15)
      ? {
          fromStroke: random.integer(10, strokes),
          rateHz: logger.rateHz * random.pick([0.5, 2]),
          resolutionAmps: logger.resolutionAmps * random.pick([0.5, 1, 1]),
        }
      : null,
    newBattery: random.chance(0.15)
      ? {
          fromStroke: random.integer(10, strokes),
          volts: supply.batteryVolts * random.uniform(0.01, 0.045),
          ohmsPart: random.uniform(0.4, 0.9),
        }
      : null,
    pondPart: sometimes(0.3, 0.05, 0.2),
    gritPart: sometimes(0.4, 0.005, 0.02),
  };
}

function drawServices(random: Random, last: number, { facts }: Plant): PlannedService[] {
  const count = random.chance(0.5) ? random.integer(1, 3) : 0;
  return Array.from({ length: count }, () => {
    const beforeStroke = random.integer(12, last);
    const side = facts.sides.length > 1 && random.chance(0.2) ? random.pick(facts.sides) : null;
    const idle = { beforeStroke, side, frictionFactor: 1, freshMotor: false };
    if (random.chance(0.5)) {
      const kind = random.pick<ServiceKind>(['other', 'fasteners-seated', 'cleaned', 'adjusted']);
      return { ...idle, kind };
    }
    const kind = random.pick<ServiceKind>(['lubricated', 'lubricated', 'adjusted', 'motor-replaced']);
    const low = kind === 'lubricated' ? 0.82 : 0.96;
    const high = kind === 'lubricated' ? 0.95 : kind === 'adjusted' ? 1.1 : 1.02;
    const whole = { ...idle, side: null, kind };
    return { ...whole, frictionFactor: random.uniform(low, high), freshMotor: kind === 'motor-replaced' };
  }).sort((a, b) => a.beforeStroke - b.beforeStroke);
}
