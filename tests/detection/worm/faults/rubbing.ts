import type { WarningKind } from '../../../../analysis/warning.ts';
import type { Random } from '../../../../server/demo/simulator/random.ts';
import {
  bearableRise,
  drawSideAt,
  eachOf,
  leastRise,
  nameOf,
  planFault,
  pushFor,
  type Recipe,
  type WormFault,
} from '../fault.ts';
import type { WormRoom } from '../room.ts';

/** A rise of one side of two moves the share as well, and slows that side where nothing keeps it in step. */
function fits(
  at: number | null,
  { sides, controller }: WormRoom,
): { readonly alsoFits: readonly WarningKind[] } {
  if (at === null || sides.length === 1) return { alsoFits: [] };
  return { alsoFits: controller.trimPerMetre > 0 ? ['uneven-sides'] : ['uneven-sides', 'late-side'] };
}

function drawRise(room: WormRoom, at: number | null, random: Random, most: number): number {
  const bearable = Math.min(
    ...room.sides
      .filter((_, index) => at === null || at === index)
      .map((side) => bearableRise(side, room.facts.nominalVolts)),
  );
  const least = leastRise(room);
  return random.logUniform(least, Math.max(least * 1.05, Math.min(most, bearable)));
}

/** Dirt or a lubricant washed off: from one stroke to the next all of the travel rubs more. */
export const driedAtOnce: Recipe = {
  name: 'dried at once',
  needs: () => ({}),
  draw({ room, onset, random }) {
    const at = drawSideAt(room, random, 0.35);
    const rise = drawRise(room, at, random, 1.1);
    return planFault(
      this.name,
      onset,
      { kind: 'rising-draw', side: nameOf(room, at), severity: rise, ...fits(at, room) },
      (condition) =>
        eachOf(condition, at, (side, index) => {
          side.rubbing *= 1 + pushFor(room.sides[index], rise);
        }),
    );
  },
};

/** A lubricant that dries up: a little more with every stroke. */
export const dryingUp: Recipe = {
  name: 'drying up',
  needs: () => ({}),
  draw({ room, life, onset, random }) {
    const at = drawSideAt(room, random, 0.35);
    const left = life.length - onset;
    // Slower than this it would not come to anything that can be seen before the history ends.
    const perStroke = Math.max(random.uniform(0.003, 0.01), (leastRise(room) + 0.08) / left);
    const most = Math.min(1.2, drawRise(room, at, random, 1.2) + 0.6);
    return planFault(
      this.name,
      onset,
      {
        kind: 'rising-draw',
        side: nameOf(room, at),
        severity: Math.min(most, perStroke * left),
        ...fits(at, room),
      },
      (condition, index) =>
        eachOf(condition, at, (side, sideAt) => {
          const bearable = bearableRise(room.sides[sideAt], room.facts.nominalVolts);
          side.rubbing *=
            1 + pushFor(room.sides[sideAt], Math.min(most, bearable, perStroke * (index - onset + 1)));
        }),
    );
  },
};

/** A stretch of the travel on which one side binds, far longer than a peak. */
export const bindingZone: Recipe = {
  name: 'binding zone',
  needs: () => ({}),
  draw({ room, onset, random }) {
    const at = drawSideAt(room, random, 0) ?? 0;
    const width = random.uniform(0.18, 0.4);
    const from = random.uniform(0.08, 0.9 - width);
    const rise = drawRise(room, at, random, 1.2) + 0.25;
    const part = pushFor(
      room.sides[at],
      Math.min(rise, bearableRise(room.sides[at], room.facts.nominalVolts)),
    );
    return planFault(
      this.name,
      onset,
      {
        kind: 'rising-draw',
        side: nameOf(room, at),
        severity: rise,
        alsoFits: ['stall-spike', ...fits(at, room).alsoFits],
      },
      (condition) =>
        eachOf(condition, at, ({ bumps }) => {
          // Four humps that overlap make a plateau with sloping ends.
          for (let hump = 0; hump < 4; hump++) {
            bumps.push({ position: from + (width * (hump + 0.5)) / 4, halfWidth: width / 4, part });
          }
        }),
    );
  },
};

/** Magnets that were overheated: the motor draws more for the same push, and runs ahead of the other side. */
export const weakMagnets: Recipe = {
  name: 'weak magnets',
  needs: () => ({}),
  draw({ room, onset, random }) {
    const at = drawSideAt(room, random, 0) ?? 0;
    const left = 1 / (1 + random.uniform(leastRise(room) + 0.05, 0.5));
    return planFault(
      this.name,
      onset,
      {
        kind: 'rising-draw',
        side: nameOf(room, at),
        severity: 1 / left - 1,
        alsoFits: room.sides.length === 2 ? ['uneven-sides', 'late-side'] : [],
      },
      (condition) =>
        eachOf(condition, at, (side) => {
          side.magnets *= left;
        }),
    );
  },
};

/** An adjustment that hands one side's load to the other. */
export const loadMoved: Recipe = {
  name: 'load moved',
  needs: () => ({ sides: 2 }),
  draw({ room, onset, random }) {
    const at = random.integer(0, 1);
    const moved = random.uniform(0.18, 0.5);
    return planFault(
      this.name,
      onset,
      { kind: 'uneven-sides', side: nameOf(room, at), severity: moved, alsoFits: ['rising-draw'] },
      (condition) =>
        condition.sides.forEach((side, index) => {
          const newtons = (moved * room.sides[1 - at].runNewtons) / room.sides[index].runNewtons;
          side.rubbing *= index === at ? 1 + newtons : 1 - moved;
        }),
    );
  },
};

/** The wrong lubricant: it gathers what then rubs. */
export const wrongLubricant: Recipe = {
  name: 'wrong lubricant',
  needs: () => ({}),
  draw(occasion): WormFault {
    const { room, life, random } = occasion;
    const at = drawSideAt(room, random, 0.5);
    const dries = random.integer(25, 45);
    const serviceAt = Math.min(
      Math.max(occasion.onset, SOUND_BEFORE + dries),
      Math.floor(life.length * 0.75),
    );
    const starts = serviceAt - dries;
    const before = random.uniform(0.16, 0.28) / dries;
    const after = before * random.uniform(2.5, 5);
    const most = random.uniform(0.4, 0.7);
    const fault = planFault(
      this.name,
      serviceAt,
      {
        kind: 'draw-rebound',
        // The contract lets a rebound name no side of a room that has two.
        side: room.facts.sides.length === 1 ? nameOf(room, 0) : null,
        severity: after,
        alsoFits: ['rising-draw', ...fits(at, room).alsoFits],
      },
      (condition, index) =>
        eachOf(condition, at, (side, sideAt) => {
          const rise =
            index < serviceAt ? before * (index - starts) : Math.min(most, after * (index - serviceAt));
          side.rubbing *= 1 + pushFor(room.sides[sideAt], rise);
        }),
    );
    return {
      ...fault,
      startsStroke: starts,
      service: { beforeStroke: serviceAt, kind: 'lubricated', side: nameOf(room, at) },
    };
  },
};

/** Strokes before a room that will be greased wrongly begins to dry. */
const SOUND_BEFORE = 24;
