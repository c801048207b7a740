import type { Condition } from '../condition.ts';
import {
  drawSideAt,
  eachOf,
  leastRise,
  mostRise,
  nameOf,
  type Occasion,
  planFault,
  type Recipe,
} from '../fault.ts';
import { seek, tryOut } from '../mildStroke.ts';
import type { CableRoom } from '../room.ts';

/** What one fault does to a side's rolling, scaled so that the running current rises as it is meant to. */
export function rubFor(
  room: CableRoom,
  at: number | null,
  rise: number,
  bear: (condition: Condition, rub: number) => void = (condition, rub) => rubMore(condition, at, rub),
): number | null {
  const watched = at ?? 0;
  const sound = tryOut(room, 'extend', () => {}).runAmps[watched];
  return seek(
    0,
    4,
    rise,
    (rub) => tryOut(room, 'extend', (each) => bear(each, rub)).runAmps[watched] / sound - 1,
  );
}

export function rubMore(condition: Condition, at: number | null, rub: number): void {
  eachOf(condition, at, (side) => {
    side.rolling *= 1 + rub;
  });
}

/** A rise that is plain to see and that the motor still bears; null: this room has no room for one. */
function drawRise({ room, random }: Occasion, most = 1, least = leastRise(room)): number | null {
  const highest = Math.min(most, mostRise(room));
  return highest < least ? null : random.uniform(least, highest);
}

/** The other side's part of a rise that is one side's. */
const SHARED = ['uneven-sides'] as const;

/** Dry rollers, a dragging floor, a tight guide: from one stroke to the next. */
export const dryGuides: Recipe = {
  name: 'dry-guides',
  needs: () => ({}),
  draw: (occasion) => {
    const { room, random, onset } = occasion;
    const at = drawSideAt(room, random, 0.5);
    const rise = drawRise(occasion);
    const rub = rise === null ? null : rubFor(room, at, rise);
    if (rise === null || rub === null) return null;
    const told = tellSide(room, at, (condition) => rubMore(condition, at, rub));
    if (told === null) return null;
    const label = {
      kind: 'rising-draw',
      severity: rise,
      ...told,
    } as const;
    return planFault('dry-guides', onset, label, (condition) => rubMore(condition, at, rub));
  },
};

/** Wear and dirt that grow a little every stroke. */
export const drift: Recipe = {
  name: 'friction-drift',
  needs: () => ({}),
  draw: ({ room, life, random, onset }) => {
    const at = drawSideAt(room, random, 0.5);
    const rate = random.uniform(0.002, 0.006);
    const most = Math.min(1, mostRise(room));
    const left = life.length - onset;
    // It has to come to something within its life.
    const from = Math.min(onset, Math.round(life.length - Math.log(1 + Math.min(0.6, most)) / rate));
    const starts = from >= 28 ? from : onset;
    const rub = rubFor(room, at, most);
    if (rub === null || Math.exp(rate * Math.max(left, life.length - starts)) - 1 < 0.35) return null;
    const told = tellSide(room, at, (condition) => rubMore(condition, at, rub));
    if (told === null) return null;
    const label = {
      kind: 'rising-draw',
      severity: rate,
      ...told,
    } as const;
    return planFault('friction-drift', starts, label, (condition, index) => {
      const rise = Math.min(most, Math.exp(rate * (index - starts)) - 1);
      rubMore(condition, at, (rub * rise) / most);
    });
  },
};

/** A wheel that seizes now and then and frees itself. */
export const nowAndThen: Recipe = {
  name: 'intermittent-drag',
  needs: () => ({}),
  draw: (occasion) => {
    const { room, random, onset } = occasion;
    const at = drawSideAt(room, random, 0.4);
    const rise = drawRise(occasion, 1.1, 0.4);
    const rub = rise === null ? null : rubFor(room, at, rise);
    if (rise === null || rub === null) return null;
    const told = tellSide(room, at, (condition) => rubMore(condition, at, rub));
    if (told === null) return null;
    const often = random.uniform(0.35, 0.65);
    const label = {
      kind: 'rising-draw',
      severity: rise,
      ...told,
    } as const;
    return planFault('intermittent-drag', onset, label, (condition, _index, _lived, own) => {
      const bears = own.chance(often);
      if (bears) rubMore(condition, at, rub * own.uniform(0.85, 1.15));
    });
  },
};

/** A topper whose spring was wound too far, or a cable that rubs on one run of its pulleys: one way only. */
export const oneWay: Recipe = {
  name: 'one-way-drag',
  needs: () => ({}),
  draw: (occasion) => {
    const { room, random, onset } = occasion;
    const rise = drawRise(occasion, 0.9, 0.25);
    const rub = rise === null ? null : rubFor(room, null, rise);
    if (rise === null || rub === null) return null;
    const way = random.pick(['extend', 'retract'] as const);
    const label = {
      kind: 'rising-draw',
      severity: rise,
      side: nameOf(room, room.sides.length === 1 ? 0 : null),
    } as const;
    return planFault('one-way-drag', onset, label, (condition, _index, lived) => {
      if (lived.direction === way) rubMore(condition, null, rub);
    });
  },
};

const COLD_C = 8;

/** Grease of the wrong kind, or a floor swollen with frost: only when it is cold, and then far more than cold alone does. */
export const onlyCold: Recipe = {
  name: 'cold-drag',
  needs: () => ({ thermometer: true }),
  draw: (occasion) => {
    const { room, life, onset } = occasion;
    const coldBefore = life.slice(0, onset).filter(({ ambientC }) => ambientC < COLD_C);
    const coldAfter = life.slice(onset).filter(({ ambientC }) => ambientC < COLD_C);
    const rise = drawRise(occasion, 1, 0.45);
    const rub = rise === null ? null : rubFor(room, null, rise);
    if (rise === null || rub === null || coldBefore.length < 6 || coldAfter.length < 16) return null;
    const first = life.findIndex(({ ambientC }, index) => index >= onset && ambientC < COLD_C);
    const label = {
      kind: 'rising-draw',
      severity: rise,
      side: nameOf(room, room.sides.length === 1 ? 0 : null),
    } as const;
    return planFault('cold-drag', first, label, (condition, _index, lived) => {
      if (lived.ambientC < COLD_C) rubMore(condition, null, rub);
    });
  },
};

/** A floor that has swollen over half of the way. */
export const swollenFloor: Recipe = {
  name: 'swollen-floor',
  needs: () => ({}),
  draw: (occasion) => {
    const { room, random, onset } = occasion;
    const at = drawSideAt(room, random, 0.6);
    const rise = drawRise(occasion, 0.8);
    const length = random.uniform(0.45, 0.65);
    const from = random.uniform(0.15, 0.85 - length);
    const bear = (condition: Condition, part: number) =>
      eachOf(condition, at, ({ stretches }) => stretches.push({ from, to: from + length, part }));
    const part = rise === null ? null : rubFor(room, at, rise, bear);
    if (rise === null || part === null) return null;
    const told = tellSide(room, at, (condition) => bear(condition, part));
    if (told === null) return null;
    const peak = (rise / length) * 0.6;
    if (peak > mostRise(room)) return null;
    const label = {
      kind: 'rising-draw',
      severity: rise,
      ...told,
    } as const;
    return planFault('swollen-floor', onset, label, (condition) => bear(condition, part));
  },
};

/** Magnets that were overheated: the motor takes more for the same pull, and turns faster for the same volts. */
export const weakMagnets: Recipe = {
  name: 'weak-magnets',
  needs: () => ({}),
  draw: ({ room, random, onset }) => {
    const at = drawSideAt(room, random, 0);
    const magnets = 1 - random.uniform(0.22, 0.4);
    const change = (condition: Condition) =>
      eachOf(condition, at, (side) => {
        side.magnets *= magnets;
      });
    const sound = tryOut(room, 'extend', () => {}).runAmps[at ?? 0];
    const rise = tryOut(room, 'extend', change).runAmps[at ?? 0] / sound - 1;
    if (rise < leastRise(room) || rise > mostRise(room)) return null;
    const told = tellSide(room, at, change);
    if (told === null) return null;
    const label = {
      kind: 'rising-draw',
      severity: rise,
      ...told,
    } as const;
    return planFault('weak-magnets', onset, label, change);
  },
};

/** Both sides are dry, one far more than the other. */
export const unequallyDry: Recipe = {
  name: 'both-unequal',
  needs: () => ({ gearings: ['side-by-side', 'rack'], plainController: true }),
  draw: (occasion) => {
    const { room, random, onset } = occasion;
    const rise = drawRise(occasion, 1, 0.5);
    const more = random.integer(0, 1);
    const bear = (condition: Condition, rub: number) =>
      condition.sides.forEach((side, at) => {
        side.rolling *= 1 + (at === more ? rub : 0.55 * rub);
      });
    const rub = rise === null ? null : rubFor(room, more, rise, bear);
    if (rise === null || rub === null) return null;
    const label = { kind: 'rising-draw', severity: rise, alsoFits: SHARED } as const;
    return planFault('both-unequal', onset, label, (condition) => bear(condition, rub));
  },
};

/** One side's alone below the first part of its rise, both sides' above the second; between them nobody can say. */
const ALONE = 0.2;
const TOGETHER = 0.55;

/**
 * How a rise that one side's guides make is to be told from the currents: a stiff box lets both motors bear it. null: it
 * is neither plainly one side's nor both's.
 */
export function tellSide(
  room: CableRoom,
  at: number | null,
  bear: (condition: Condition) => void,
): { side: string | null; alsoFits: readonly 'uneven-sides'[] } | null {
  if (at === null || room.sides.length === 1) return { side: nameOf(room, at), alsoFits: [] };
  const parts = (['extend', 'retract'] as const).map((way) => {
    const sound = tryOut(room, way, () => {}).runAmps;
    const borne = tryOut(room, way, bear).runAmps;
    return (borne[1 - at] / sound[1 - at] - 1) / (borne[at] / sound[at] - 1);
  });
  if (Math.max(...parts) < ALONE) return { side: nameOf(room, at), alsoFits: SHARED };
  return Math.min(...parts) > TOGETHER ? { side: null, alsoFits: SHARED } : null;
}
