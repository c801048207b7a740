import { median } from '../../statistics/median.ts';
import { DIRECTIONS, type RoomDescription } from '../../trace.ts';
import type { HeavyMemory } from './heavyMemory.ts';

/**
 * Running current that no side should need, amperes, where the room's own rating is not known: a third above the 12 A of one
 * of several sides, or of a side of an in-wall drive, or the 30 A of a single motor, that rooms in health are known to draw.
 * Common practice, no source.
 */
const SHOULD_NEED = { sideAmps: 16, singleAmps: 40 };
/**
 * A motor that runs at well over a third of what it draws stalled is overloaded in any drive (best efficiency lies far below:
 * maker's data sheets of permanent-magnet motors).
 */
const OVERLOADED_PART = 0.5;
/** A side that draws so much of what no drive should need is held to be overloaded a little sooner: at this part. */
const MUCH_PART = 0.7;
export const OVERLOADED_WITH_MUCH = 0.42;

/** So near its stall a motor crawls: then one stall that was read is enough. */
const CRAWLING_PART = 0.65;

/** Below this stall, amperes, a motor has hardly the power to move a room: what ends there was held back. A guess, no source. */
const WEAKEST_STALL_AMPS = 9;
/**
 * What a motor draws at standstill goes with the supply and the warmth of its copper, and near its stall it grows hot on its
 * way; a controller holds start and stop at one limit, day after day. How far apart they are, natural logarithm: of each
 * stroke, of most, and the stops of all; and of how many. Guesses, no source.
 */
const ONE_LIMIT = { fewest: 2, each: 0.03, most: 0.015, all: 0.015 };

/** One stroke of a direction may be an odd one. */
const FEWEST_EACH_WAY = 2;

/** Running amperes of a side in the direction that takes more and in the one that takes less; 0 where not yet known. */
export function drawn({ amps }: HeavyMemory): { most: number; least: number } {
  const recorded = DIRECTIONS.map((direction) => amps[direction]).filter((list) => list.length > 0);
  const medians = recorded.map((list) => (list.length < FEWEST_EACH_WAY ? 0 : median(list)));
  return { most: Math.max(0, ...medians), least: Math.min(...medians) };
}

/** Running current that no side of such a drive should need, amperes. */
export function shouldNeed({ drive, sides }: RoomDescription): number {
  return drive === 'in-wall' || sides.length > 1 ? SHOULD_NEED.sideAmps : SHOULD_NEED.singleAmps;
}

/** A side's load as parts of what such a drive should need, and of what its motor can bear beside its stall. */
export function loadOf(
  memory: HeavyMemory,
  room: RoomDescription,
): { needed: number; overload: number; stallAmps: number } {
  const needed = drawn(memory).least / shouldNeed(room);
  if (memory.stall.length === 0) return { needed, overload: 0, stallAmps: Number.NaN };
  // What is let go before it stood still, or read by a slow logger's means, is read too low and never too high: no start rises
  // above what the motor draws at standstill.
  const stallAmps = Math.max(memory.mostAmps, ...memory.stall);
  const part = median([...memory.amps.extend, ...memory.amps.retract]) / stallAmps;
  const mostPart = needed > MUCH_PART ? OVERLOADED_WITH_MUCH : OVERLOADED_PART;
  const isUnsure = memory.stall.length < 2 || stallAmps < WEAKEST_STALL_AMPS || isLimited(memory);
  const overload = isUnsure && part < CRAWLING_PART ? 0 : part / mostPart;
  return { needed, overload, stallAmps };
}

/** Whether starts and stops are one and the same current in every stroke. */
function isLimited({ stops }: HeavyMemory): boolean {
  if (stops.length < ONE_LIMIT.fewest) return false;
  const apart = stops.map(({ below }) => Math.abs(below));
  const amps = stops.map((stop) => stop.amps);
  const spread = Math.log(Math.max(...amps) / Math.min(...amps));
  return Math.max(...apart) < ONE_LIMIT.each && median(apart) < ONE_LIMIT.most && spread < ONE_LIMIT.all;
}
