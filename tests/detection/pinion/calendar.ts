import type { Direction } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Supply } from './plant.ts';

const DAY_MS = 86_400_000;

/** One record that the room's people will make. */
export interface PlannedStroke {
  readonly direction: Direction;
  readonly atMs: number;
  readonly ambientC: number;
  readonly isWet: boolean;
  readonly source: 'battery' | 'shore' | 'engine';
  /** Of the battery's open voltage from its usual, for a 12 V system. */
  readonly chargeVolts: number;
  /** Parts of the usual force against extending, from the way the coach stands. */
  readonly tilt: number;
  /** From the second side to the first, parts of the load: the coach's nose stands high or low. */
  readonly lean: number;
  /** People and luggage aboard, parts of the friction. */
  readonly laden: number;
  readonly restDays: number;
  /** 0 to 1: where the user let go for good; the next record goes on from there. */
  readonly stopAt: number | null;
  readonly isBroken: boolean;
}

/** Where and how the coach is used. */
export interface Travels {
  readonly startMs: number;
  readonly meanC: number;
  readonly seasonC: number;
  /** Cold weeks: year's day at which they begin, and how much colder. */
  readonly snaps: readonly { readonly day: number; readonly colder: number }[];
  readonly winterStorage: boolean;
  readonly rainPart: number;
  readonly tiltPart: number;
  /** Chances of each stroke or camp. */
  readonly halfPart: number;
  readonly showPart: number;
  /** How a full cupboard or tank weighs in the travelling season. */
  readonly ladenPart: number;
}

export function drawTravels(random: Random): Travels {
  return {
    startMs: Date.UTC(2020, 0, 1) + random.uniform(0, 1000) * DAY_MS,
    meanC: random.uniform(9, 20),
    seasonC: random.uniform(4, 11),
    snaps: Array.from({ length: random.integer(1, 4) }, () => ({
      day: random.uniform(0, 1460),
      colder: random.uniform(8, 18),
    })),
    winterStorage: random.chance(0.5),
    rainPart: random.uniform(0.1, 0.4),
    tiltPart: random.uniform(0.005, 0.03),
    halfPart: random.chance(0.4) ? random.uniform(0.005, 0.02) : 0,
    showPart: random.chance(0.3) ? 0.04 : 0,
    ladenPart: random.uniform(0, 0.035),
  };
}

/** `count` records of a room that is out in every camp and in on every road. */
export function planStrokes(
  travels: Travels,
  supply: Supply,
  count: number,
  random: Random,
): PlannedStroke[] {
  const planned: PlannedStroke[] = [];
  let atMs = travels.startMs;
  let lastMs = atMs - 20 * DAY_MS;
  const snapAt = (day: number) =>
    travels.snaps.find((snap) => day >= snap.day && day < snap.day + 9)?.colder ?? 0;
  while (planned.length < count) {
    const yearDay = (atMs / DAY_MS) % 365.25;
    const stores = travels.winterStorage && (yearDay > 320 || yearDay < 40);
    atMs += (stores ? random.uniform(60, 120) : random.logUniform(2, 22)) * DAY_MS;
    const isWet = random.chance(travels.rainPart);
    const tilt = Math.max(-0.06, Math.min(0.06, random.normal(0, travels.tiltPart)));
    const lean = Math.max(-0.03, Math.min(0.03, random.normal(0, 0.4 * travels.tiltPart)));
    const charge = random.normal(0, 0.12) - (random.chance(0.06) ? random.uniform(0.2, 0.5) : 0);
    const summer = Math.cos((2 * Math.PI * (yearDay - 200)) / 365.25);
    const laden =
      travels.ladenPart * Math.max(0, summer) + (random.chance(0.1) ? random.uniform(0.02, 0.06) : 0);
    const visits: Direction[] = random.chance(travels.showPart)
      ? ['extend', 'retract', 'extend', 'retract']
      : ['extend', 'retract'];
    for (const [visit, direction] of visits.entries()) {
      const ambientC = temperature(travels, atMs, snapAt, random);
      const common = { direction, ambientC, isWet, tilt, lean, laden, chargeVolts: charge };
      const source = sourceOf(supply.habit, direction, random);
      const restDays = (atMs - lastMs) / DAY_MS;
      const parts = random.chance(travels.halfPart) ? [random.uniform(0.3, 0.75), null] : [null];
      for (const part of parts) {
        planned.push({
          ...common,
          source,
          atMs,
          restDays: part === null && parts.length > 1 ? 0 : restDays,
          stopAt: part === null || direction === 'extend' ? part : 1 - part,
          isBroken: parts.length > 1,
        });
        lastMs = atMs;
        atMs += random.uniform(120, 900) * 1000;
      }
      const soon = visits.length > 2 && visit < 2;
      if (direction === 'extend')
        atMs += soon ? random.uniform(1, 10) * 60_000 : random.logUniform(0.6, 9) * DAY_MS;
    }
  }
  return planned.slice(0, count);
}

function temperature(
  { meanC, seasonC }: Travels,
  atMs: number,
  snapAt: (day: number) => number,
  random: Random,
): number {
  const yearDay = (atMs / DAY_MS) % 365.25;
  const season = seasonC * Math.cos((2 * Math.PI * (yearDay - 200)) / 365.25);
  const hour = random.uniform(-4, 4);
  return meanC + season + random.normal(0, 3) + hour - snapAt((atMs / DAY_MS) % 1460);
}

/** A motorhome's engine runs as the room comes in to leave; a camper has its battery, at a post now and then. */
function sourceOf(habit: Supply['habit'], direction: Direction, random: Random): PlannedStroke['source'] {
  if (habit === 'motorhome') return random.chance(direction === 'retract' ? 0.9 : 0.5) ? 'engine' : 'battery';
  return random.chance(habit === 'shore' ? 0.85 : 0.15) ? 'shore' : 'battery';
}
