import { type ForcesCondition, withFriction } from '../condition.ts';
import { USUAL_VOLTS } from '../room.ts';
import {
  anySide,
  type ForcesFaultKind,
  forcesFault,
  frictionFor,
  SUITS_ALL,
  seesAll,
  sideName,
} from './fault.ts';

const step: ForcesFaultKind = {
  name: 'step',
  leastSides: 1,
  suits: SUITS_ALL,
  draw(room, random, onset) {
    const severity = random.uniform(0.13, 0.3);
    const factor = frictionFor(room, 0, severity);
    const told = { kind: 'rising-draw', side: sideName(room, null), severity } as const;
    return forcesFault('step', onset, told, (condition) => withFriction(condition, null, factor));
  },
};

const stepOneSide: ForcesFaultKind = {
  name: 'step-one-side',
  leastSides: 2,
  suits: seesAll,
  draw(room, random, onset) {
    const severity = random.uniform(0.15, 0.35);
    const side = anySide(room, random);
    const factor = frictionFor(room, side, severity);
    const told = {
      kind: 'rising-draw',
      alsoFits: ['uneven-sides'],
      side: sideName(room, side),
      severity,
    } as const;
    return forcesFault('step-one-side', onset, told, (condition) => withFriction(condition, side, factor));
  },
};

const drift: ForcesFaultKind = {
  name: 'drift',
  leastSides: 1,
  suits: SUITS_ALL,
  leastAfter: 55,
  draw(room, _random, onset) {
    const severity = 0.003;
    const told = { kind: 'rising-draw', side: sideName(room, null), severity } as const;
    return forcesFault('drift', onset, told, (condition, stroke) =>
      withFriction(condition, null, frictionFor(room, 0, severity * (stroke - onset + 1))),
    );
  },
};

/** Weight goes from one side over to the other. */
const uneven: ForcesFaultKind = {
  name: 'uneven',
  leastSides: 2,
  suits: seesAll,
  draw(room, random, onset) {
    const severity = random.uniform(0.12, 0.3);
    const side = anySide(room, random);
    const told = {
      kind: 'uneven-sides',
      alsoFits: ['rising-draw'],
      side: sideName(room, side),
      severity,
    } as const;
    return forcesFault('uneven', onset, told, (condition) => {
      const more = withFriction(condition, side, frictionFor(room, side, severity));
      return withFriction(more, 1 - side, frictionFor(room, 1 - side, -severity));
    });
  },
};

/** Far above its rating from the first stroke on; on one side where there are two, or on all. */
const heavy: ForcesFaultKind = {
  name: 'heavy',
  leastSides: 1,
  suits: ({ facts }) => facts.ratedAmps !== null,
  draw(room, random) {
    const side = room.recorded.length === 2 && random.chance(0.5) ? anySide(room, random) : null;
    const severity = random.uniform(1.5, 1.9);
    const target = severity * (room.facts.ratedAmps ?? 0);
    const told = { kind: 'heavy-room', side: sideName(room, side), severity } as const;
    const factors = room.sides.map((_, at) => heavyFactor(room, at, target));
    return forcesFault('heavy', 0, told, (condition) =>
      carrying(
        condition,
        room.sides.map((_, at) => (side === null || at === side ? factors[at] : 1)),
      ),
    );
  },
};

/** No rating is known, but a motor that runs beyond half its stall current is past its greatest power. */
const heavyUnrated: ForcesFaultKind = {
  name: 'heavy-unrated',
  leastSides: 1,
  // Where one way takes much more than the other, the room would not move at all that way.
  suits: ({ facts, endsBy, runningAmps: [{ extend, retract }] }) =>
    facts.ratedAmps === null && endsBy === 'end-stop' && Math.abs(Math.log(retract / extend)) < 0.12,
  draw(room, random) {
    const severity = random.uniform(0.55, 0.65);
    const told = { kind: 'heavy-room', side: sideName(room, null), severity } as const;
    const factors = room.sides.map((own, at) => heavyFactor(room, at, (severity * USUAL_VOLTS) / own.ohms));
    return forcesFault('heavy-unrated', 0, told, (condition) => carrying(condition, factors));
  },
};

/** So much more friction on each side, on a supply that stands up to it: a weak one is another fault. */
function carrying(condition: ForcesCondition, factors: readonly number[]): ForcesCondition {
  return {
    ...condition,
    supplyOhms: condition.supplyOhms / Math.max(...factors),
    openVolts: Math.max(12.4, condition.openVolts),
    friction: condition.friction.map((own, at) => own * factors[at]),
  };
}

/** The factor that brings a side's running current to a target, at most to 0.65 of its stall. */
function heavyFactor(room: Parameters<typeof frictionFor>[0], side: number, targetAmps: number): number {
  const amps = (room.runningAmps[side].extend + room.runningAmps[side].retract) / 2;
  const most = (0.65 * USUAL_VOLTS) / room.sides[side].ohms;
  return frictionFor(room, side, Math.min(targetAmps, most) / amps - 1);
}

/** Climbs, is lubricated, falls below where it began, and climbs faster than before. */
const rebound: ForcesFaultKind = {
  name: 'rebound',
  leastSides: 1,
  suits: SUITS_ALL,
  leastBefore: 26,
  leastAfter: 40,
  draw(room, random, onset) {
    const before = random.integer(18, 26);
    const slope = random.uniform(0.0015, 0.003);
    const severity = slope * random.uniform(2.5, 4);
    const falls = slope * before + random.uniform(0.04, 0.1);
    const told = {
      kind: 'draw-rebound',
      alsoFits: ['rising-draw'],
      side: sideName(room, null),
      severity,
    } as const;
    const level = (stroke: number) =>
      stroke < onset
        ? slope * (stroke - onset + before + 1)
        : Math.min(0.4, slope * before - falls + severity * (stroke - onset));
    const change = forcesFault('rebound', onset, told, (condition, stroke) =>
      withFriction(condition, null, frictionFor(room, 0, level(stroke))),
    );
    return { ...change, startsStroke: onset - before, serviceStroke: onset };
  },
};

export const FRICTION_FAULTS = [step, stepOneSide, drift, uneven, heavy, heavyUnrated, rebound];
