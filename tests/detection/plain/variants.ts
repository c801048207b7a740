import { DIRECTIONS, type ServiceKind } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import type { PlainCondition } from './condition.ts';
import type { PlainRoom } from './room.ts';

type Change = (condition: PlainCondition, stroke: number, stay: number, random: Random) => PlainCondition;

/** What happens to healthy rooms besides. */
export interface PlainVariants {
  readonly names: readonly string[];
  readonly changes: readonly Change[];
  readonly services: ReadonlyMap<number, ServiceKind>;
  /** 130 days of rest before this stay; null: none. */
  readonly storageBeforeStay: number | null;
  /** The recorded strokes that one movement comes to: more than one where the user let go and went on later. */
  readonly parts: (condition: PlainCondition, stroke: number, random: Random) => readonly PlainCondition[];
}

/** Draws some of them for a room. */
export function drawVariants(room: PlainRoom, strokes: number, random: Random): PlainVariants {
  const names: string[] = [];
  const changes: Change[] = [];
  const has = (name: string, chance = 0.3) => {
    const is = random.chance(chance);
    if (is) names.push(name);
    return is;
  };
  const own = random.fork();
  // Nobody could tell a sudden frost from a fault where no thermometer was sent.
  if (room.sendsAmbient && has('cold-snap')) {
    const from = own.integer(0, strokes);
    const degrees = own.uniform(-18, -4);
    const until = from + own.integer(4, 12);
    changes.push((condition, stroke) =>
      stroke >= from && stroke < until ? { ...condition, ambientC: degrees } : condition,
    );
  }
  if (has('weak-spells')) {
    // A supply that sags below seven eighths of nominal while the room moves is a fault, not a healthy room's.
    const low = Math.max(11.6, HELD_VOLTS + room.supplyOhms * mostAmps(room));
    changes.push(voltSpells(own, 0.25, low, low + 0.6));
  }
  if (has('strong-spells')) changes.push(voltSpells(own, 0.4, 13.8, 14.6));
  if (has('re-zeroed')) {
    const every = own.integer(6, 40);
    const jumps = Array.from({ length: strokes }, () => room.sides.map(() => own.normal(0, 0.2)));
    changes.push((condition, stroke) => ({
      ...condition,
      sensors: condition.sensors.map((sensor, side) => ({
        ...sensor,
        offsetAmps: sensor.offsetAmps + jumps[Math.floor(stroke / every)][side],
      })),
    }));
  }
  if (has('pauses')) {
    changes.push((condition, _stroke, _stay, strokeRandom) => {
      if (!strokeRandom.chance(0.3)) return condition;
      const position = strokeRandom.uniform(0.2, 0.8);
      return { ...condition, pauses: [{ position, durationS: strokeRandom.uniform(0.6, 5) }] };
    });
  }
  if (has('rate-change')) {
    const from = own.integer(0, strokes);
    const rateHz = room.rateHz >= 50 ? room.rateHz / 2 : room.rateHz * 2;
    changes.push((condition, stroke) => (stroke >= from ? { ...condition, rateHz } : condition));
  }
  if (has('tilted-stays', 0.5)) changes.push(tiltedStays(room, own));
  if (has('odd-strokes')) changes.push(oddStrokes(room));
  const services = new Map<number, ServiceKind>();
  if (has('services')) {
    for (let i = own.integer(1, 3); i > 0; i--) {
      services.set(own.integer(5, strokes), own.pick(['cleaned', 'lubricated', 'other'] as const));
    }
  }
  const storageBeforeStay = has('storage') ? own.integer(2, Math.floor(strokes / 3)) : null;
  const partial = has('partial-strokes') ? own.uniform(0.02, 0.08) : 0;
  return { names, changes, services, storageBeforeStay, parts: partsOf(partial) };
}

const HELD_VOLTS = 10.8;

/** What all sides draw together, the way that takes more, in the cold. */
function mostAmps({ sides }: PlainRoom): number {
  const ways = DIRECTIONS.map((way) => sides.reduce((sum, side) => sum + side.amps[way], 0));
  return 1.3 * Math.max(...ways);
}

function voltSpells(random: Random, share: number, low: number, high: number): Change {
  const seeds = Array.from({ length: 2000 }, () => ({
    on: random.chance(share),
    volts: random.uniform(low, high),
  }));
  return (condition, _stroke, stay) => {
    const { on, volts } = seeds[stay % seeds.length];
    return on ? { ...condition, openVolts: volts } : condition;
  };
}

/** One stay in eight stands crooked: every stroke there runs harder or easier, the sides oppositely or alike. */
function tiltedStays(room: PlainRoom, random: Random): Change {
  const stays = Array.from({ length: 2000 }, () => {
    const isOff = random.chance(0.125);
    const whole = isOff ? random.normal(0, 0.025) : 0;
    const apart = isOff ? random.normal(0, 0.035) : 0;
    return room.sides.map((_, side) => 1 + whole + (side === 0 ? apart : -apart));
  });
  return (condition, _stroke, stay) => ({
    ...condition,
    levels: condition.levels.map((level, side) => level * stays[stay % stays.length][side]),
  });
}

/** Now and then something lies in the way once. */
function oddStrokes(room: PlainRoom): Change {
  return (condition, _stroke, _stay, random) => {
    if (!random.chance(0.01)) return condition;
    const place = random.uniform(0.15, 0.85);
    const side = random.integer(0, room.sides.length - 1);
    const shape = (i: number, position: number) =>
      i === side && Math.abs(position - place) < 0.01 ? 1.8 : 1;
    return { ...condition, shapes: [...condition.shapes, shape] };
  };
}

function partsOf(share: number): PlainVariants['parts'] {
  return (condition, _stroke, random) => {
    if (!random.chance(share)) return [condition];
    const middle = condition.from + (condition.to - condition.from) * random.uniform(0.3, 0.7);
    return [
      { ...condition, to: middle, stalls: false, pauses: [] },
      { ...condition, from: middle, pauses: [] },
    ];
  };
}
