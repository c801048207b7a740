import type { Direction } from '../../../../analysis/trace.ts';
import type { Condition } from '../condition.ts';
import { drawSideAt, eachOf, mostRise, nameOf, type Occasion, planFault, type Recipe } from '../fault.ts';
import { seek, tryOut } from '../mildStroke.ts';
import type { CableRoom } from '../room.ts';

/** Long enough for the logger to see it several times over, and still short. */
function widthOf({ speed, logger }: CableRoom): number {
  return Math.max(0.006, (3.5 * speed) / logger.rateHz);
}

/** Spikes are for rooms whose logger sees one while it lasts. */
const SEES = { leastRateHz: 25 } as const;

/** How far above the running current a spike stands out: plain to the eye over the noise. */
function drawHeight({ room, random }: Occasion): number | null {
  const { runAmps } = room.sides[0];
  const least = Math.max(0.35, (8 * room.logger.noiseAmps) / runAmps);
  const most = Math.min(1.6, mostRise(room));
  return most < least ? null : random.uniform(least, most);
}

/** Newtons that raise the current so far above what the same stroke takes without it. */
function newtonsFor(
  room: CableRoom,
  at: number | null,
  height: number,
  bear: (condition: Condition, newtons: number) => void,
  direction: Direction = 'extend',
): number | null {
  const watched = at ?? 0;
  const sound = byPlace(tryOut(room, direction, () => {}).tape, watched);
  const side = room.sides[watched];
  const most = 6 * side.newtonsPerAmp * side.runAmps;
  return seek(0, most, height * side.runAmps, (newtons) => {
    const struck = byPlace(tryOut(room, direction, (each) => bear(each, newtons)).tape, watched);
    return Math.max(...struck.map((amps, place) => (place > 5 && place < 95 ? amps - sound[place] : 0)));
  });
}

/** The greatest current in each hundredth of the travel. */
function byPlace({ amps, positions, steps }: ReturnType<typeof tryOut>['tape'], at: number): number[] {
  const places = new Array<number>(100).fill(0);
  for (let step = 0; step < steps; step++) {
    const place = Math.max(0, Math.min(99, Math.floor(positions[at][step] * 100)));
    places[place] = Math.max(places[place], amps[at][step]);
  }
  for (let place = 1; place < 100; place++) if (places[place] === 0) places[place] = places[place - 1];
  return places;
}

/** One hard place; `often` below 1: now and then only. */
function samePlace(
  name: string,
  occasion: Occasion,
  way: Direction | null,
  often: number,
): ReturnType<Recipe['draw']> {
  const { room, random, onset } = occasion;
  const at = drawSideAt(room, random, 0);
  const height = drawHeight(occasion);
  const widthMetres = widthOf(room);
  if (height === null || widthMetres > 0.03 * room.travelMetres) return null;
  const position = random.uniform(0.15, 0.85);
  const bear = (condition: Condition, newtons: number, place = position) =>
    eachOf(condition, at, ({ bumps }) =>
      bumps.push({ position: place, widthMetres, newtons, direction: way }),
    );
  const newtons = newtonsFor(room, at, height, bear, way ?? 'extend');
  if (newtons === null) return null;
  const label = {
    kind: 'stall-spike',
    pattern: 'same-place',
    severity: height,
    side: nameOf(room, at),
    position,
  } as const;
  return planFault(name, onset, label, (condition, _index, _lived, own) => {
    const bears = own.chance(often);
    const place = position + own.normal(0, 0.002);
    if (bears) bear(condition, newtons * own.uniform(0.8, 1.2), place);
  });
}

/** Broken strands of a cable that catch where they meet a pulley: often only one way, and not every time. */
export const frayedCable: Recipe = {
  name: 'frayed-cable',
  needs: () => ({ gearings: ['drum'], ...SEES }),
  draw: (occasion) => {
    const way = occasion.random.pick([null, 'extend', 'retract'] as const);
    return samePlace('frayed-cable', occasion, way, occasion.random.pick([1, 1, 0.75]));
  },
};

/** A screw that stands proud of a rack or a floor. */
export const proudScrew: Recipe = {
  name: 'proud-screw',
  needs: () => ({ gearings: ['rack', 'side-by-side', 'ram', 'cross-shaft'], ...SEES }),
  draw: (occasion) => samePlace('proud-screw', occasion, null, 1),
};

/** A pulley with a flat, or a gear with a broken tooth: once each turn. */
function oncePerTurn(name: string, occasion: Occasion): ReturnType<Recipe['draw']> {
  const { room, random, onset } = occasion;
  const at = drawSideAt(room, random, 0);
  const height = drawHeight(occasion);
  const widthMetres = widthOf(room);
  if (height === null || widthMetres > 0.13 * room.turnMetres) return null;
  const phaseMetres = random.uniform(0, room.turnMetres);
  const bear = (condition: Condition, newtons: number) =>
    eachOf(condition, at, (side) => {
      side.turnBump = { newtons, widthMetres, phaseMetres };
    });
  const newtons = newtonsFor(room, at, height, bear);
  if (newtons === null) return null;
  const label = {
    kind: 'stall-spike',
    pattern: 'once-per-turn',
    severity: height,
    side: nameOf(room, at),
  } as const;
  return planFault(name, onset, label, (condition, _index, _lived, own) =>
    bear(condition, newtons * own.uniform(0.85, 1.15)),
  );
}

export const flatPulley: Recipe = {
  name: 'flat-pulley',
  needs: () => ({ gearings: ['drum'], leastTurns: 4.5, ...SEES }),
  draw: (occasion) => oncePerTurn('flat-pulley', occasion),
};

export const brokenTooth: Recipe = {
  name: 'broken-tooth',
  needs: () => ({ gearings: ['rack', 'ram'], leastTurns: 4.5, ...SEES }),
  draw: (occasion) => oncePerTurn('broken-tooth', occasion),
};

/** Grit that lies elsewhere each time, or a gear that rides up on its rack now and then. */
export const grit: Recipe = {
  name: 'grit',
  needs: () => SEES,
  draw: (occasion) => {
    const { room, random, onset } = occasion;
    const at = drawSideAt(room, random, 0);
    const height = drawHeight(occasion);
    const widthMetres = widthOf(room);
    if (height === null || widthMetres > 0.03 * room.travelMetres) return null;
    const bear = (condition: Condition, newtons: number, position = 0.5) =>
      eachOf(condition, at, ({ bumps }) => bumps.push({ position, widthMetres, newtons, direction: null }));
    const newtons = newtonsFor(room, at, height, bear);
    if (newtons === null) return null;
    const most = random.integer(3, 6);
    const label = {
      kind: 'stall-spike',
      pattern: 'scattered',
      severity: height,
      side: nameOf(room, at),
    } as const;
    return planFault('grit', onset, label, (condition, _index, _lived, own) => {
      const times = own.integer(1, most);
      for (let time = 0; time < times; time++)
        bear(condition, newtons * own.uniform(0.8, 1.2), own.uniform(0.12, 0.88));
    });
  },
};
