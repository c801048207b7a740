import { stallsAsEver } from '../baseline/stallsAsEver.ts';
import { channelOf, type RoomState } from '../room/state.ts';
import { median } from '../statistics/median.ts';
import { DIRECTIONS } from '../trace.ts';
import type { FindingContext } from './finding.ts';
import type { ScaleMemory } from './scaleMemory.ts';

/** Troubles that were said first explain a higher current; the scale is not doubted then. */
const EXPLAIN: ReadonlySet<string> = new Set([
  'rising-draw',
  'uneven-sides',
  'late-side',
  'dropped-load',
  'draw-rebound',
]);
const LATEST = 3;
/** Scale changes smaller than this are within what seasons do. */
const LEAST = 0.12;
/** What a supply, and a temperature, may do besides where nobody recorded it. */
const UNRECORDED_MORE: readonly [volts: number, degrees: number] = [0.06, 0.12];
/**
 * Both fell alike, and the room takes its time as ever: no weaker supply does that, and no warmth, which takes half as much
 * off the stall as off the running current. Natural logarithm: guesses, no source.
 */
const LEAST_FALL = 0.2;
const KEEPS_TIME = 0.08;
/** A stall that cold copper may have made as well tells no scale, natural logarithm: 45 degrees of 0.393 %. */
const MOST_WEATHER = 0.18;
/** Of the running current's change, the stall currents show at least and at most so much. */
const LIKE = { least: 0.75, most: 1.35 };
/** No room gets so much easier all at once by itself: then a start that is hard to read need not agree as well. */
const FALL = 0.18;
/** Where running and stall current both fell to a third, little is left to agree: what still reads is the sensor's own. */
const COLLAPSED = -1;
/** While it is said already, less will do to go on. */
const STILL = { least: 0.05, like: { least: 0.4, most: 2.5 } };

/**
 * By how much a side's sensor seems to have changed its scale (natural logarithm); null: not told. Friction moves
 * the running current alone, since the current at standstill is V/R; a wrong scale moves inrush and stall alike.
 */
export function scaleChange(context: FindingContext, side: string): number | null {
  const memory = context.state.scale[side];
  if (memory === undefined) return null;
  const rises = {
    running: 'runningAmps',
    inrush: 'inrushAmps',
    endStop: 'endStopAmps',
    duration: 'durationS',
  } as const;
  const asEver = stallsAsEver(channelOf(context.state, side, context.direction), context.analysis);
  for (const key of ['running', 'inrush', 'endStop', 'duration'] as const) {
    const judged = context.residual(side, rises[key]);
    if (judged === null || (key === 'endStop' && !asEver)) continue;
    // Where the copper tells the weather, a wrong scale would explain itself.
    memory[key].push(judged.rise + judged.byCopper);
    if (memory[key].length > LATEST) memory[key].shift();
    if (key === 'running') memory.ways = [...memory.ways, context.direction].slice(-LATEST);
  }
  const judged = context.residual(side, 'runningAmps');
  if (judged === null || memory.running.length === 0) return null;
  const running = median(memory.running);
  const stall = running > 0 && hasSoftStart(context, side) ? null : stallRise(context, side);
  const said = context.state.open.some(
    ({ kind, side: whose, evidence }) =>
      kind === 'sensor-doubt' && (whose === side || (whose === null && evidence.doubt === 'scale')),
  );
  const like = said ? STILL.like : LIKE;
  const explained = running > 0 && context.state.open.some((open) => EXPLAIN.has(open.kind));
  if (explained && !said) return null;
  if (stall === null || (!said && isOneWay(memory, running))) return null;
  const ratio = stall / running;
  const collapsed = Math.max(running, stall) < COLLAPSED;
  const agrees = collapsed || (ratio > like.least && ratio < like.most);
  const isFall = running < 0 && agrees && readsStop(context, side) && keepsTime(memory);
  const least = said ? STILL.least : isFall ? LEAST_FALL : leastChange(context);
  if (Math.abs(running) < least) return null;
  if (judged.byCopper !== 0 && Math.abs(stall) < MOST_WEATHER) return null;
  if (running > 0 && runsFaster(context, side, memory)) return null;
  if (running > 0 && (runsSlower(context, side) || startsAsEver(context, side, running))) return null;
  if (running < 0 && runsAhead(context, side)) return null;
  // A start that is read badly agrees by chance now and then.
  if (!readsStop(context, side) && (running < 0 ? shedsLoad : loadMoved)(context, side)) return null;
  const eased = running < -FALL && stall < 0 && !shedsLoad(context, side);
  return agrees || (eased && mayAgree(context, side, stall - running)) ? running : null;
}

/** A scale is the same for both directions: strokes the other way changed by at least this part of it. A guess, no source. */
const BACK_PART = 0.4;

function isOneWay({ running, ways }: ScaleMemory, change: number): boolean {
  return DIRECTIONS.some((way) => {
    const own = running.filter((_, i) => ways[i] === way);
    return own.length > 0 && median(own) / change < BACK_PART;
  });
}

/** Whether the latest strokes took as long as expected: the motor turns on the supply that it did. */
function keepsTime({ duration }: ScaleMemory): boolean {
  return duration.length >= 2 && Math.abs(median(duration)) < KEEPS_TIME;
}

/** A sensor quickens nothing; a motor whose magnets lost some of their field draws more and turns faster. Natural logarithm, a guess. */
const FASTER = -0.1;

/** Nor does any supply quicken a room by so much; what is quicker by more was broken off. Natural logarithm, guesses. */
const MUCH_FASTER = { most: -0.15, least: -0.35 };

/** Whether the latest strokes took less time than the supply that was recorded, any other, or the other side accounts for. */
function runsFaster(context: FindingContext, side: string, { duration }: ScaleMemory): boolean {
  if (duration.length < 2) return false;
  const own = median(duration);
  const knowsSupply = context.conditions[0] !== null;
  if (knowsSupply && !readsStop(context, side) && own < FASTER) return true;
  const longer = knowsSupply ? own : (longerThanOthers(context.state, side) ?? own);
  return longer < MUCH_FASTER.most && longer > MUCH_FASTER.least;
}

/**
 * Nor does a sensor slow anything: a motor that takes longer at a higher current works harder. Natural logarithm, guesses:
 * the other side goes by the same supply, one that was recorded is allowed for less well.
 */
const SLOWER = { thanOther: 0.06, byRecord: 0.08 };

/** Whether the latest strokes of a side took longer than expected, and than the other sides did. */
function runsSlower({ state, conditions }: FindingContext, side: string): boolean {
  const { duration } = state.scale[side];
  if (duration.length < 2) return false;
  const longer = longerThanOthers(state, side);
  if (longer === null) return conditions[0] !== null && median(duration) > SLOWER.byRecord;
  return longer > SLOWER.thanOther;
}

/** And one that draws less and comes ahead of the other lost load to it: natural logarithm, a guess. */
const AHEAD = -0.035;

function runsAhead({ state }: FindingContext, side: string): boolean {
  const longer = longerThanOthers(state, side);
  return longer !== null && longer < AHEAD;
}

/** By how much longer than the other sides a side took on the latest strokes, beside what it used to; null: not known. */
function longerThanOthers({ scale, room }: RoomState, side: string): number | null {
  const taken = (name: string) => (scale[name].duration.length < 2 ? null : median(scale[name].duration));
  const own = taken(side);
  const others = room.sides
    .filter((name) => name !== side)
    .map(taken)
    .filter((longer) => longer !== null);
  return own === null || others.length === 0 ? null : own - median(others);
}

/** A start that stands so little above the running current is none at standstill: a controller lets it rise with the load. */
const LEAST_START = 1.5;

function hasSoftStart(context: FindingContext, side: string): boolean {
  const { inrushAmps, runningAmps } = context.analysis.sides[side];
  return !readsStop(context, side) && inrushAmps < LEAST_START * runningAmps;
}

/** A start that rose by no more than this part of the running current's rise, so many deviations below it, stands against a scale. */
const STARTS_AS_EVER = { part: 0.3, sigmas: 2 };

/** Whether the latest starts, which stand far above the running current, draw what they did: a wrong scale reads them higher too. */
function startsAsEver({ state, analysis, residual }: FindingContext, side: string, running: number): boolean {
  const { inrush } = state.scale[side];
  const { inrushAmps, runningAmps } = analysis.sides[side];
  const judged = residual(side, 'inrushAmps');
  if (judged === null || inrush.length < LATEST || inrushAmps < CLEAR_START * runningAmps) return false;
  const rise = median(inrush);
  const isSure = running - rise > STARTS_AS_EVER.sigmas * judged.deviation;
  return isSure && rise < STARTS_AS_EVER.part * running;
}

/** Whether a stall at the end stop, of all sides as ever, was read on this stroke and before. */
function readsStop({ state, analysis, direction, residual }: FindingContext, side: string): boolean {
  if (residual(side, 'endStopAmps') === null || state.scale[side].endStop.length < 2) return false;
  return stallsAsEver(channelOf(state, side, direction), analysis);
}

/** The load moved when the other side changed by this part of what this one did, the other way. */
const MOVED_PART = 0.35;

/** Whether the latest strokes show that another side works harder by what this one works less, or the other way round. */
function loadMoved({ state }: FindingContext, side: string): boolean {
  const change = median(state.scale[side].running);
  return state.room.sides.some((other) => {
    const { running } = state.scale[other];
    if (other === side || running.length < LATEST) return false;
    const against = -Math.sign(change) * median(running);
    return against > Math.max(LEAST, MOVED_PART * Math.abs(change));
  });
}

/**
 * Whether another side works harder, as is said of it or as it shows, or has to drag this one, which comes late: then this
 * one gets easier by itself after all.
 */
function shedsLoad(context: FindingContext, side: string): boolean {
  const said = context.state.open.some(
    (open) =>
      (open.kind === 'uneven-sides' && open.side !== side) ||
      (open.kind === 'late-side' && open.side === side),
  );
  return said || loadMoved(context, side);
}

/** Whether the stall's and the running current's changes differ by no more than the spread of what tells the stall. */
function mayAgree(context: FindingContext, side: string, difference: number): boolean {
  const stall = context.residual(side, readsStop(context, side) ? 'endStopAmps' : 'inrushAmps');
  return stall !== null && Math.abs(difference) < (2 * stall.deviation) / Math.sqrt(LATEST);
}

/** Cold, and a supply that nobody recorded, move the stall current too: then only a larger change is told. */
function leastChange({ conditions }: FindingContext): number {
  return LEAST + UNRECORDED_MORE.reduce((sum, more, i) => sum + (conditions[i] === null ? more : 0), 0);
}

/**
 * How much of a side's stall current cold accounts for, natural logarithm, never below zero: what is left of its rise
 * when a stronger supply, which would have shortened the stroke as much, is taken off. Null where no stall at the end
 * stop was read: an inrush is over too soon to be a thermometer.
 */
export function coldRise(memory: ScaleMemory): number | null {
  if (memory.endStop.length < 2) return null;
  const stall = median(memory.endStop);
  const faster = memory.duration.length > 0 ? Math.min(0, median(memory.duration)) : 0;
  return Math.max(0, stall + faster);
}

/** Both sides' stall currents moved alike, by at least this part: that is cold copper, or the supply. */
const SHARED_PART = 0.5;
/** What both together do at most to a stall, by whether the supply was recorded: what moves more is the logger's scale. */
const MOST_SHARED = { recorded: MOST_WEATHER + 0.06, unrecorded: MOST_WEATHER + 0.2 };
/** A start that stands out less may be no more than the current that the room then runs with. */
const CLEAR_START = 2.5;

/**
 * How much a side's stall current rose over the latest strokes; null where it was not read, or where the other sides
 * share it and weather or supply may do as much. The stall at the end stop lasts and is read well. The inrush is over
 * before a slow logger sees its peak, but the peaks of all sides fall between the same two samples: what the others'
 * rose is taken off.
 */
function stallRise(context: FindingContext, side: string): number | null {
  const { state, analysis, conditions } = context;
  const atStop = readsStop(context, side);
  const read = (name: string): number | null => {
    const list = atStop ? state.scale[name].endStop : state.scale[name].inrush;
    return list.length < (atStop ? 2 : LATEST) ? null : median(list);
  };
  const own = read(side);
  const others = state.room.sides
    .filter((name) => name !== side)
    .map(read)
    .filter((rise) => rise !== null);
  if (own === null || others.length === 0) return own;
  const shared = others.every((other) => other / own > SHARED_PART);
  const { inrushAmps, runningAmps } = analysis.sides[side];
  const most = conditions[0] === null ? MOST_SHARED.unrecorded : MOST_SHARED.recorded;
  if (shared && Math.abs(own) > most && (atStop || inrushAmps > CLEAR_START * runningAmps)) return own;
  if (!atStop) return own - median(others);
  return shared ? null : own;
}
