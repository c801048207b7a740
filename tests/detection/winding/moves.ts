import type { Direction } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import { DAY_MS, type Variants } from './variants.ts';

/** One press of the switch, planned. */
export interface Move {
  readonly index: number;
  readonly atMs: number;
  readonly direction: Direction;
  /** Camps are counted; both strokes of one share the ground, the load and the supply. */
  readonly camp: number;
  /** The hand lets go for good at this part of the way; null: at the end. */
  readonly stopAtPart: number | null;
  /** Does not go the whole way. */
  readonly isBroken: boolean;
}

const BEGIN_MS = Date.UTC(2021, 2, 20, 15);
const ABANDONED_CHANCE = 0.012;
const TURN_BACK_MS = 40_000;

/** When the room goes out and in: a trip every fortnight or so, a long storage once, now and then one taken back. */
export function planMoves(strokes: number, variants: Variants, random: Random): Move[] {
  const moves: Move[] = [];
  let atMs = BEGIN_MS + random.uniform(0, 200) * DAY_MS;
  let hasStored = false;
  const add = (direction: Direction, camp: number, stopAtPart: number | null, isBroken: boolean) =>
    moves.push({ index: moves.length, atMs: Math.round(atMs), direction, camp, stopAtPart, isBroken });
  for (let camp = 0; moves.length < strokes; camp++) {
    atMs += random.logUniform(2, 22) * DAY_MS;
    if (!hasStored && moves.length >= (variants.storageBeforeStroke ?? strokes)) {
      atMs += variants.storageDays * DAY_MS;
      hasStored = true;
    }
    atMs = atHour(atMs, random.normal(15.5, 2));
    if (variants.isAbandonedNowAndThen && moves.length > 20 && random.chance(ABANDONED_CHANCE)) {
      add('extend', camp, random.uniform(0.15, 0.7), true);
      atMs += TURN_BACK_MS;
      add('retract', camp, null, true);
      atMs += 3 * TURN_BACK_MS;
    }
    add('extend', camp, null, false);
    atMs = atHour(atMs + random.logUniform(1, 7) * DAY_MS, random.normal(10.5, 1.5));
    add('retract', camp, null, false);
  }
  return moves.slice(0, strokes);
}

/** The same day at another hour, never earlier than told. */
function atHour(atMs: number, hour: number): number {
  const there = Math.floor(atMs / DAY_MS) * DAY_MS + Math.min(21, Math.max(7, hour)) * (DAY_MS / 24);
  return there < atMs ? there + DAY_MS : there;
}
