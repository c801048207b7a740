import type { ServiceKind } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import { type ForcesCondition, withFriction, withSensing } from './condition.ts';
import type { ForcesRoom } from './room.ts';

/** Where a stroke stands in its room's history. */
export interface StrokePlace {
  readonly stroke: number;
  readonly stay: number;
}

export type ForcesChange = (
  condition: ForcesCondition,
  place: StrokePlace,
  random: Random,
) => ForcesCondition;

/** What happens to a room that is no fault of it. */
export interface ForcesVariants {
  readonly changes: readonly ForcesChange[];
  /** Work done before a stroke. */
  readonly services: ReadonlyMap<number, ServiceKind>;
  /** The stay that comes after a long time in storage; negative: none. */
  readonly storageBeforeStay: number;
  /** Part of the strokes that are broken off and taken up again in a record of their own. */
  readonly brokenOff: number;
}

const PLAIN_SERVICES: readonly ServiceKind[] = [
  'cleaned',
  'lubricated',
  'fasteners-seated',
  'adjusted',
  'other',
];

/** Draws what befalls a healthy room; every kind comes to some rooms only. */
export function drawVariants(room: ForcesRoom, strokes: number, random: Random): ForcesVariants {
  const stays = Math.ceil(strokes / 2);
  const services = new Map<number, ServiceKind>();
  const changes: ForcesChange[] = [userEnds(room)];
  const may = (chance: number, draw: () => ForcesChange) => {
    if (random.chance(chance)) changes.push(draw());
  };
  if (random.chance(0.6)) {
    for (let count = random.integer(1, 3); count > 0; count--) {
      const at = random.integer(10, strokes - 1);
      services.set(at, random.pick(PLAIN_SERVICES));
      changes.push(afterService(at, services.get(at) ?? 'other', random));
    }
  }
  may(room.sendsAmbient ? 0.3 : 0.1, () => coldSnap(room, stays, random));
  may(0.3, () => staysOf(stays, random, 0.08, (own) => ({ openVolts: own.uniform(11.5, 12) })));
  may(0.3, () => staysOf(stays, random, 0.15, (own) => ({ openVolts: own.uniform(13.8, 14.5) })));
  may(0.35, () => rezeroed(room, strokes, random));
  may(0.5, () => pauses(random.uniform(0.02, 0.1)));
  may(0.2, () => otherRate(strokes, random));
  may(0.15, () => otherRange(strokes, random));
  may(0.5, () => runningIn(random));
  may(0.2, () => newBattery(strokes, random));
  may(0.15, () => (condition, _, own) => (own.chance(0.3) ? { ...condition, toldC: null } : condition));
  if (room.recorded.length > 1) may(0.1, () => sideForgotten(random));
  return {
    changes,
    services,
    storageBeforeStay: random.chance(0.25) ? random.integer(4, stays) : -1,
    brokenOff: random.chance(0.15) ? 0.02 : 0,
  };
}

/** Whoever holds the button lets go after a stall of any length, or now and then just before. */
function userEnds(room: ForcesRoom): ForcesChange {
  return (condition, _, random) => {
    if (room.endsBy !== 'user') return condition;
    if (random.chance(0.9)) return { ...condition, holdS: random.uniform(0.3, 2.5) };
    const short = random.uniform(0.002, 0.015);
    return { ...condition, to: condition.to === 1 ? 1 - short : short, holdS: 0 };
  };
}

function afterService(at: number, kind: ServiceKind, random: Random): ForcesChange {
  const eases =
    kind === 'lubricated' || kind === 'cleaned' ? random.uniform(0.93, 1) : random.uniform(0.98, 1.02);
  return (condition, { stroke }) => (stroke < at ? condition : withFriction(condition, null, eases));
}

/** Some stays under other conditions, which last as long as the stay. */
function staysOf(
  stays: number,
  random: Random,
  part: number,
  change: (random: Random) => Partial<ForcesCondition>,
): ForcesChange {
  const changed = new Map<number, Partial<ForcesCondition>>();
  for (let stay = 0; stay < stays; stay++) if (random.chance(part)) changed.set(stay, change(random));
  return (condition, { stay }) => ({ ...condition, ...changed.get(stay) });
}

function coldSnap(room: ForcesRoom, stays: number, random: Random): ForcesChange {
  const first = random.integer(3, stays);
  const last = first + random.integer(1, 3);
  const coldC = random.uniform(-15, -3);
  return (condition, { stay }, own) => {
    if (stay < first || stay > last) return condition;
    const ambientC = coldC + own.normal(0, 1);
    return { ...condition, ambientC, toldC: room.sendsAmbient ? ambientC : null };
  };
}

/** A clamp that is put on anew; where no rest shows its zero, only as far as nobody would mistake it. */
function rezeroed(room: ForcesRoom, strokes: number, random: Random): ForcesChange {
  const rests = room.restS.before + room.restS.after > 0;
  const least = Math.min(...room.runningAmps.flatMap((own) => [own.extend, own.retract]));
  const most = rests ? 0.4 : 0.02 * least;
  const at = random.integer(8, strokes);
  const moves = room.clamps.map(() => random.uniform(-most, most));
  return (condition, { stroke }) => {
    if (stroke < at) return condition;
    const sensing = condition.sensing.map((own, side) => ({ ...own, zeroAmps: own.zeroAmps + moves[side] }));
    return { ...condition, sensing };
  };
}

function pauses(part: number): ForcesChange {
  return (condition, _, random) => {
    if (!random.chance(part)) return condition;
    const places = Array.from({ length: random.integer(1, 2) }, () => random.uniform(0.1, 0.9)).sort();
    if (condition.direction === 'retract') places.reverse();
    return {
      ...condition,
      pauses: places.map((position) => ({ position, durationS: random.uniform(0.5, 4) })),
    };
  };
}

function otherRate(strokes: number, random: Random): ForcesChange {
  const at = random.integer(10, strokes);
  const rateHz = random.pick([10, 20, 50, 100]);
  return (condition, { stroke }) => (stroke < at ? condition : { ...condition, rateHz });
}

/** The clamp is switched to a range twice as wide: its steps are twice as large, its amperes the same. */
function otherRange(strokes: number, random: Random): ForcesChange {
  const at = random.integer(10, strokes);
  return (condition, { stroke }) =>
    stroke < at ? condition : withSensing(condition, null, ({ rangeAmps }) => ({ rangeAmps: 2 * rangeAmps }));
}

/** A room that wears in over its first strokes, and ages by a few per cent in a hundred. */
function runningIn(random: Random): ForcesChange {
  const first = random.uniform(0, 0.06);
  const lasts = random.uniform(15, 60);
  const aStroke = random.uniform(-2e-4, 2e-4);
  return (condition, { stroke }) =>
    withFriction(condition, null, 1 + first * Math.exp(-stroke / lasts) + aStroke * stroke);
}

function newBattery(strokes: number, random: Random): ForcesChange {
  const at = random.integer(10, strokes);
  const part = random.uniform(0.4, 0.8);
  return (condition, { stroke }) =>
    stroke < at
      ? condition
      : {
          ...condition,
          openVolts: condition.openVolts + 0.15,
          supplyOhms: part * condition.supplyOhms,
        };
}

function sideForgotten(random: Random): ForcesChange {
  const side = random.integer(0, 1);
  return (condition, _, own) => (own.chance(0.05) ? { ...condition, leftOut: [side] } : condition);
}
