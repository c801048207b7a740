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
/** A side that draws so much of what no drive should need is held to be overloaded a little sooner. */
const MUCH_PART = 0.7;
/** At this part of what its motor draws stalled. */
export const OVERLOADED_WITH_MUCH = 0.42;

/** So near its stall a motor crawls: then one stall that was read is enough, but of a motor too weak to move a room. */
const CRAWLING_PART = 0.65;

/** Below this stall, amperes, a motor has hardly the power to move a room: what ends there was held back. A guess, no source. */
const WEAKEST_STALL_AMPS = 9;
/**
 * What a motor draws at standstill goes with the supply and the warmth of its copper, and near its stall it grows hot on its
 * way; a controller holds start and stop at one limit, day after day. How far apart they are, natural logarithm: of each
 * stroke, of most, and the stops of all; and of how many. Guesses, no source.
 */
const ONE_LIMIT = { fewest: 2, each: 0.03, most: 0.015, all: 0.015 };

/**
 * Where a controller starts a motor softly no start tells what it draws at standstill; but that goes with the supply, and a limit
 * is the same on any. The stops lie apart by this part at the most of what they would if they were brought to the reference supply, and
 * that by so much at the least, natural logarithm; and of how many. Guesses, no source.
 */
const ON_ANY_SUPPLY = { fewest: 4, part: 0.7, least: 0.015 };

/**
 * No stop exceeds what a motor draws at standstill, and every stop that is held comes up to it: a highest stop that no other stroke
 * came near is something else. How near, as a part of it, on a supply that nobody recorded, and in how many strokes. Guesses.
 */
const REACHED_AGAIN = { part: 0.94, strokes: 2 };

/** One stroke of a direction may be an odd one. */
const FEWEST_EACH_WAY = 2;

/**
 * A stop goes with the load where it differs between the two ways by this part of what the running current differs by, and by at
 * least so much, natural logarithm. Where the running current differs by less than that, nothing tells. Guesses, no source.
 */
const WITH_LOAD = { part: 0.5, least: 0.05 };
/** Two strokes each way are waited for. */
const ENOUGH_STROKES = 2 * FEWEST_EACH_WAY;

/** Running amperes of a side in the direction that takes more and in the one that takes less; 0 where not yet known. */
export function drawn({ amps }: HeavyMemory): { most: number; least: number } {
  const recorded = DIRECTIONS.map((direction) => amps[direction]).filter((list) => list.length > 0);
  const medians = recorded.map((list) => (list.length < FEWEST_EACH_WAY ? 0 : median(list)));
  return { most: Math.max(0, ...medians), least: Math.min(...medians) };
}

/** The first strokes draw this part at the least of what a room is called heavy for. A guess, no source. */
const FIRST_PART = 0.9;

/** Whether a side drew from its first stroke of a direction on about what it draws: what came after lighter ones both ways is a rise. */
export function isFromFirstOn({ amps }: HeavyMemory): boolean {
  const recorded = DIRECTIONS.map((direction) => amps[direction]).filter((list) => list.length > 0);
  return recorded.some((list) => list[0] >= FIRST_PART * median(list));
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
  const reached = memory.stall.filter((amps) => amps >= REACHED_AGAIN.part * stallAmps).length;
  const isReachedAgain = reached >= REACHED_AGAIN.strokes;
  const isWeak = stallAmps < WEAKEST_STALL_AMPS;
  const isUnsure =
    !isReachedAgain ||
    isWeak ||
    memory.amps.extend.length + memory.amps.retract.length < ENOUGH_STROKES ||
    isLimited(memory) ||
    isSameOnAnySupply(memory);
  const crawls = part >= CRAWLING_PART && (isReachedAgain || !isWeak);
  const tellsNothing = (isUnsure && !crawls) || goesWithLoad(memory);
  return { needed, overload: tellsNothing ? 0 : part / mostPart, stallAmps };
}

/**
 * Whether the stops are higher the way that takes more. V/R is the same whichever way a motor was driven, or less where it
 * grew hotter; what ends with the load is held by a clutch or a soft stop, and the motor draws more where it stands.
 */
function goesWithLoad({ amps, stops }: HeavyMemory): boolean {
  const [out, back] = DIRECTIONS.map((way) => stops.filter(({ direction }) => direction === way));
  if (Math.min(out.length, back.length) < FEWEST_EACH_WAY) return false;
  const load = Math.log(median(amps.extend) / median(amps.retract));
  const stop = Math.log(
    median(out.map(({ atReference }) => atReference)) / median(back.map(({ atReference }) => atReference)),
  );
  const higher = Math.sign(load) * stop;
  return (
    Math.abs(load) >= WITH_LOAD.least && higher >= Math.max(WITH_LOAD.least, WITH_LOAD.part * Math.abs(load))
  );
}

/** Whether starts and stops are one and the same current in every stroke. */
function isLimited({ stops }: HeavyMemory): boolean {
  if (stops.length < ONE_LIMIT.fewest) return false;
  const apart = stops.map(({ below }) => Math.abs(below));
  const spread = spreadOf(stops.map(({ amps }) => amps));
  return Math.max(...apart) < ONE_LIMIT.each && median(apart) < ONE_LIMIT.most && spread < ONE_LIMIT.all;
}

/** Whether stops that no start came up to were the same whatever the supply was. */
function isSameOnAnySupply({ stops }: HeavyMemory): boolean {
  const isStartedSoftly = stops.every(({ below }) => below < -ONE_LIMIT.each);
  if (!isStartedSoftly || stops.length < ON_ANY_SUPPLY.fewest) return false;
  const bySupply = spreadOf(stops.map(({ atReference }) => atReference));
  const asDrawn = spreadOf(stops.map(({ amps }) => amps));
  return bySupply >= ON_ANY_SUPPLY.least && asDrawn <= ON_ANY_SUPPLY.part * bySupply;
}

/** How far currents lie apart, natural logarithm. */
const spreadOf = (amps: readonly number[]): number => Math.log(Math.max(...amps) / Math.min(...amps));
