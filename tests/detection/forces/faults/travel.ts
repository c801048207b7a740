import { DIRECTIONS } from '../../../../analysis/trace.ts';
import type { Random } from '../../../../server/demo/simulator/random.ts';
import { type ForcesCondition, withFriction } from '../condition.ts';
import { anySide, type ForcesFaultKind, forcesFault, SUITS_ALL, seesAll, sideName } from './fault.ts';

/** A side's gear slips all the way, so that it comes to its end late both ways. */
const late: ForcesFaultKind = {
  name: 'late',
  leastSides: 2,
  suits: seesAll,
  draw(room, random, onset) {
    const side = anySide(room, random);
    const slips = Math.max(random.uniform(0.06, 0.15), 0.8 / room.travelS);
    const told = { kind: 'late-side', side: sideName(room, side), severity: slips * room.travelS } as const;
    return forcesFault('late', onset, told, (condition) => ({
      ...condition,
      slip: condition.slip.map((own, at) => (at === side ? slips : own)),
    }));
  },
};

/** The side loses nearly all it pushes; the other, if there is one, takes some of it over. */
function dropped(name: string, leastSides: 1 | 2, idle: (random: Random) => number): ForcesFaultKind {
  return {
    name,
    leastSides,
    suits: seesAll,
    draw(room, random, onset) {
      const side = anySide(room, random);
      const severity = random.uniform(0.02, 0.12);
      const taken = 1 + random.uniform(0.2, 0.7);
      const idles = idle(random);
      const told = { kind: 'dropped-load', side: sideName(room, side), severity } as const;
      return forcesFault(name, onset, told, (condition) => {
        const lost = withFriction(condition, side, severity);
        const carried = room.sides.length === 2 ? withFriction(lost, 1 - side, taken) : lost;
        return { ...carried, idle: condition.idle.map((own, at) => (at === side ? own * idles : own)) };
      });
    },
  };
}

const droppedInPart: ForcesFaultKind = {
  name: 'dropped-in-part',
  leastSides: 1,
  suits: SUITS_ALL,
  draw(room, random, onset) {
    const side = anySide(room, random);
    const width = random.uniform(0.2, 0.5);
    const first = random.uniform(0.1, 0.9 - width);
    const severity = random.uniform(0.02, 0.12);
    const told = { kind: 'dropped-load', side: sideName(room, side), severity } as const;
    const shape = (own: number, position: number) =>
      own === side && position > first && position < first + width ? severity : 1;
    return forcesFault('dropped-in-part', onset, told, (condition) => ({
      ...condition,
      shapes: [...condition.shapes, shape],
    }));
  },
};

/** The contract names the direction of a short travel and no side. A stroke ends so much before its end: against something that it stalls on, or because someone lets go. */
function endsEarly(condition: ForcesCondition, cut: number, stalls: boolean): ForcesCondition {
  const to = condition.direction === 'extend' ? 1 - cut : cut;
  return { ...condition, to, holdS: stalls ? condition.holdS : 0 };
}

/** The room stays out by the cut: both strokes are short, and which end is at fault the current cannot tell. */
const short: ForcesFaultKind = {
  name: 'short',
  leastSides: 1,
  suits: SUITS_ALL,
  draw(_room, random, onset) {
    const cut = random.uniform(0.08, 0.25);
    const stalls = random.chance(0.6);
    const told = { kind: 'short-travel', side: null, severity: cut } as const;
    return forcesFault('short', onset, told, (condition) =>
      condition.direction === 'extend' ? endsEarly(condition, cut, stalls) : { ...condition, from: 1 - cut },
    );
  },
};

/** One way alone ends early, and is brought to its end unrecorded. */
const shortOneWay: ForcesFaultKind = {
  name: 'short-one-way',
  leastSides: 1,
  suits: SUITS_ALL,
  draw(_room, random, onset) {
    const cut = random.uniform(0.08, 0.25);
    const stalls = random.chance(0.6);
    const direction = random.pick(DIRECTIONS);
    const told = { kind: 'short-travel', side: null, direction, severity: cut } as const;
    return forcesFault('short-one-way', onset, told, (condition) =>
      condition.direction === direction ? endsEarly(condition, cut, stalls) : condition,
    );
  },
};

export const TRAVEL_FAULTS = [
  late,
  dropped('dropped', 1, () => 1),
  dropped('dropped-drawing-nothing', 2, (random) => random.uniform(0, 0.1)),
  droppedInPart,
  short,
  shortOneWay,
];
