import type { Direction, ServiceKind } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Habits } from './habits.ts';
import type { WormRoom } from './room.ts';
import { drawGround, drawSource, type Ground } from './stay.ts';
import { drawClimate } from './weather.ts';

/** One stroke of a room's life, before anything goes wrong. */
export interface LivedStroke {
  readonly atMs: number;
  readonly direction: Direction;
  readonly ambientC: number;
  readonly openVolts: number;
  readonly addedOhm: number;
  /** Factor on the rubbing of each side. */
  readonly rubbing: readonly number[];
  readonly pull: readonly number[];
  readonly zeroAmps: readonly number[];
  readonly holdS: number;
  readonly pause: { readonly at: number; readonly forS: number } | null;
  /** Parts of the way; less than all of it: somebody let the switch go, or took it up again. */
  readonly from: number;
  readonly to: number;
  readonly missingSide: number | null;
  /** Work that was done since the stroke before. */
  readonly service: {
    readonly atMs: number;
    readonly kind: ServiceKind;
    readonly side: string | null;
  } | null;
}

/** Below this nobody moves a room. */
const COLDEST_C = -18;
const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** Stays, journeys and winters in store until there are enough strokes. */
export function liveThrough(room: WormRoom, habits: Habits, count: number, random: Random): LivedStroke[] {
  const strokes: LivedStroke[] = [];
  const climate = drawClimate(random);
  const sideCount = room.sides.length;
  let atMs = Date.UTC(2021, random.integer(0, 11), random.integer(1, 28), 9);
  let direction: Direction = 'extend';
  let sinceMs = 0;
  let zero = room.sides.map(() => 0);
  let ground: Ground = drawGround(random, habits, sideCount);
  let source = drawSource(random, habits, room);
  let cold = false;
  let common = random.normal(0, habits.wander);
  let own = room.sides.map(() => random.normal(0, habits.wander));
  const greased = room.sides.map(() => 1);
  const serviced = drawServiceStrokes(habits.services, count, random);
  const stored = habits.longStorage ? random.integer(Math.floor(count * 0.2), Math.floor(count * 0.8)) : -1;
  let untilStored = false;
  let leftAt: number | null = null;
  while (strokes.length < count) {
    const index = strokes.length;
    if (index >= stored && stored >= 0 && !untilStored && direction === 'extend' && leftAt === null) {
      sinceMs = random.uniform(120, 280) * DAY_MS;
      atMs += sinceMs;
      untilStored = true;
    }
    common = 0.7 * common + 0.71 * random.normal(0, habits.wander);
    own = own.map((value) => 0.7 * value + 0.71 * random.normal(0, habits.wander));
    if (random.chance(habits.rezeroing)) zero = zero.map(() => random.normal(0, 1) * habits.zeroAmps);
    let service: LivedStroke['service'] = null;
    if (serviced.includes(index) && leftAt === null) {
      const kind = random.pick(['lubricated', 'cleaned', 'adjusted', 'other', 'fasteners-seated'] as const);
      if (kind === 'lubricated' || kind === 'cleaned') {
        const better = random.uniform(0.9, 1);
        greased.forEach((_, at) => {
          greased[at] *= better;
        });
      }
      service = { atMs: Math.round(atMs - sinceMs * random.uniform(0.1, 0.6)), kind, side: null };
    }
    const stood = Math.min(1, sinceMs / (120 * DAY_MS));
    const runIn = 1 + habits.runIn * Math.exp(-index / 12);
    const breaksOff = leftAt === null && random.chance(habits.breakingOff);
    const from: number = leftAt ?? 0;
    const to: number = breaksOff ? random.uniform(0.25, 0.75) : 1;
    strokes.push({
      atMs: Math.round(atMs),
      direction,
      ambientC: Math.max(COLDEST_C, climate(atMs, random) - (cold ? random.uniform(10, 20) : 0)),
      openVolts: source.openVolts + random.normal(0, 0.04),
      addedOhm: source.addedOhm,
      rubbing: room.sides.map(
        (_, at) =>
          greased[at] *
          runIn *
          (1 + common + own[at] + stood * habits.standingSticks * random.uniform(0.5, 1)),
      ),
      pull: ground.pull.map((pull, at) => (direction === 'extend' ? pull : -pull) + ground.cross[at]),
      zeroAmps: zero,
      holdS: habits.holdS + random.uniform(0, habits.holdSpreadS),
      pause:
        leftAt === null && !breaksOff && random.chance(habits.pausing)
          ? { at: random.uniform(0.2, 0.8), forS: random.uniform(0.8, 4) }
          : null,
      from,
      to,
      missingSide:
        sideCount > 1 && random.chance(habits.leavingOut) ? random.integer(0, sideCount - 1) : null,
      service,
    });
    if (breaksOff) {
      leftAt = to;
      sinceMs = random.uniform(1.5, 8) * MINUTE_MS;
      atMs += sinceMs;
      continue;
    }
    leftAt = null;
    if (direction === 'extend') {
      direction = 'retract';
      sinceMs = random.chance(habits.showing)
        ? random.uniform(4, 60) * MINUTE_MS
        : random.logUniform(0.6, 14) * DAY_MS;
      atMs += sinceMs;
    } else {
      direction = 'extend';
      const stays = random.chance(habits.showing);
      sinceMs = stays ? random.uniform(5, 90) * MINUTE_MS : random.logUniform(0.3, 20) * DAY_MS;
      atMs += sinceMs;
      if (!stays) {
        const month = new Date(atMs).getUTCMonth();
        if (habits.winters && (month >= 10 || month < 2)) {
          const wait = random.uniform(90, 150) * DAY_MS;
          sinceMs += wait;
          atMs += wait;
        }
        ground = drawGround(random, habits, sideCount);
        source = drawSource(random, habits, room);
        cold = random.chance(habits.coldSnaps);
      }
    }
  }
  return strokes;
}

function drawServiceStrokes(count: number, strokes: number, random: Random): number[] {
  return Array.from({ length: count }, () => random.integer(20, Math.max(21, strokes - 12)));
}
