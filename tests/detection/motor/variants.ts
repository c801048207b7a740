import type { HealthyVariant } from '../../../server/demo/simulator/plan.ts';
import type { PlannedService } from '../../../server/demo/simulator/plannedService.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import type { SimulatedRoom } from '../../../server/demo/simulator/room.ts';
import { batterySupply, shoreSupply } from '../../../server/demo/simulator/supply.ts';

interface Happening {
  readonly storage?: HealthyVariant['storage'];
  readonly services?: readonly PlannedService[];
  readonly change?: HealthyVariant['change'];
}

function variant(name: string, { storage = null, services = [], change }: Happening): HealthyVariant {
  return { name, storage, services, change: change ?? ((condition) => condition) };
}

type DrawVariant = (room: SimulatedRoom, strokes: number, random: Random) => HealthyVariant;

/** Whether a stroke belongs to one of the spells that begin now and then and last for some trips. */
function spells(
  strokes: number,
  random: Random,
  share: number,
  longest: number,
): (strokeIndex: number) => boolean {
  const inSpell: boolean[] = [];
  while (inSpell.length < strokes) {
    const on = random.chance(share);
    const length = 2 * random.integer(1, longest);
    for (let stroke = 0; stroke < length; stroke++) inSpell.push(on);
  }
  return (strokeIndex) => inSpell[strokeIndex] ?? false;
}

const coldSnap: DrawVariant = (_room, strokes, random) => {
  const from = random.integer(0, strokes - 1);
  const to = from + random.integer(4, 12);
  const ambientC = random.uniform(-18, -3);
  return variant('cold-snap', {
    change: (condition, strokeIndex) =>
      strokeIndex < from || strokeIndex >= to ? condition : { ...condition, ambientC },
  });
};

const weakSupplies: DrawVariant = (room, strokes, random) => {
  const weak = spells(strokes, random, 0.3, 3);
  const { ohms, capacityAh } = room.battery;
  return variant('weak-supplies', {
    change: (condition, strokeIndex, strokeRandom) =>
      weak(strokeIndex)
        ? { ...condition, supply: batterySupply(strokeRandom.uniform(0.25, 0.45), ohms * 1.2, capacityAh) }
        : condition,
  });
};

const strongSupplies: DrawVariant = (_room, strokes, random) => {
  const strong = spells(strokes, random, 0.4, 4);
  return variant('strong-supplies', {
    change: (condition, strokeIndex, strokeRandom) =>
      strong(strokeIndex)
        ? { ...condition, supply: shoreSupply(condition.supply, strokeRandom.uniform(13.5, 14.4), 90) }
        : condition,
  });
};

const rezeroedClamps: DrawVariant = (room, _strokes, random) => {
  const every = 2 * random.integer(2, 12);
  const offsets = Array.from({ length: 200 }, () => room.motors.map(() => random.normal(0, 0.25)));
  return variant('re-zeroed-clamps', {
    change: (condition, strokeIndex) => {
      const now = offsets[Math.floor(strokeIndex / every) % offsets.length];
      const sensors = condition.sensors.map((sensor, side) => ({
        ...sensor,
        offsetAmps: sensor.offsetAmps + now[side],
      }));
      return { ...condition, sensors };
    },
  });
};

const pausing: DrawVariant = (_room, _strokes, random) => {
  const share = random.uniform(0.15, 0.5);
  return variant('pauses', {
    change: (condition, _strokeIndex, strokeRandom) => {
      if (!strokeRandom.chance(share)) return condition;
      const pauses = Array.from({ length: strokeRandom.integer(1, 3) }, () => ({
        position: strokeRandom.uniform(0.1, 0.9),
        durationS: strokeRandom.uniform(0.6, 6),
      }));
      return { ...condition, pauses };
    },
  });
};

const rateChange: DrawVariant = (_room, strokes, random) => {
  const from = random.integer(Math.floor(strokes * 0.2), Math.floor(strokes * 0.8));
  const rateHz = random.pick([10, 20, 50, 100, 200] as const);
  return variant('sampling-rate-change', {
    change: (condition, strokeIndex) =>
      strokeIndex < from ? condition : { ...condition, logger: { ...condition.logger, rateHz } },
  });
};

const storage: DrawVariant = (_room, strokes, random) =>
  variant('storage', {
    storage: {
      beforeTrip: random.integer(1, Math.max(Math.floor(strokes / 2) - 1, 1)),
      days: random.uniform(90, 240),
    },
  });

const plainServices: DrawVariant = (_room, strokes, random) =>
  variant('plain-services', {
    services: Array.from({ length: random.integer(1, 4) }, () => ({
      beforeStroke: random.integer(4, Math.max(strokes - 4, 5)),
      kind: random.pick(['cleaned', 'adjusted', 'other'] as const),
      side: null,
      notes: null,
    })),
  });

const tilts: DrawVariant = (_room, strokes, random) => {
  const deviation = random.uniform(0.4, 0.9);
  const tilt = Array.from({ length: Math.ceil(strokes / 2) + 1 }, () => random.normal(0, deviation));
  return variant('site-tilt', {
    // Both strokes of one set-up stand on the same ground.
    change: (condition, strokeIndex) => ({ ...condition, tiltDegrees: tilt[strokeIndex >> 1] }),
  });
};

/** Now and then the coach stands crooked for some days: one side works harder there and the other less, both ways. */
const crookedCamps: DrawVariant = (room, strokes, random) => {
  const longest = random.integer(1, 4);
  const shifts: number[] = [];
  while (shifts.length < strokes) {
    const shift = random.chance(0.15) ? random.normal(0, 0.05) : 0;
    const length = 2 * random.integer(1, longest);
    for (let stroke = 0; stroke < length; stroke++) shifts.push(shift);
  }
  return variant('crooked-camps', {
    change: (condition, strokeIndex) => ({
      ...condition,
      sideFactors: condition.sideFactors.map((factor, side) =>
        room.motors.length > 1 && side === 0
          ? factor * (1 + shifts[strokeIndex])
          : factor * (1 - shifts[strokeIndex]),
      ),
    }),
  });
};

const wearIn: DrawVariant = (_room, _strokes, random) => {
  const fall = random.uniform(0.03, 0.08);
  const over = random.uniform(15, 40);
  return variant('wear-in', {
    change: (condition, strokeIndex) => ({
      ...condition,
      frictionFactor: condition.frictionFactor * (1 + fall * Math.exp(-strokeIndex / over)),
    }),
  });
};

const letsGo: DrawVariant = (_room, _strokes, random) => {
  const share = random.uniform(0.05, 0.3);
  return variant('lets-go-before-the-stop', {
    change: (condition, _strokeIndex, strokeRandom) => {
      if (!strokeRandom.chance(share)) return condition;
      const short = strokeRandom.uniform(0.002, 0.02);
      return { ...condition, releasePosition: condition.direction === 'extend' ? 1 - short : short };
    },
  });
};

const missedSamples: DrawVariant = (_room, _strokes, random) => {
  const missed = random.logUniform(0.001, 0.03);
  return variant('missed-samples', {
    change: (condition) => ({
      ...condition,
      sensors: condition.sensors.map((sensor) => ({ ...sensor, missed })),
    }),
  });
};

/** Everything that happens to healthy rooms; each room of a fleet gets some of it. */
export const HEALTHY_VARIANTS: readonly DrawVariant[] = [
  coldSnap,
  weakSupplies,
  strongSupplies,
  rezeroedClamps,
  pausing,
  rateChange,
  storage,
  plainServices,
  tilts,
  crookedCamps,
  wearIn,
  letsGo,
  missedSamples,
];
