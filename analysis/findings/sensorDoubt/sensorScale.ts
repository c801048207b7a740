import { endsAtStandstill } from '../../baseline/endsAtStandstill.ts';
import type { Residual } from '../../baseline/judge.ts';
import { stallsAsEver } from '../../baseline/stallsAsEver.ts';
import { channelOf } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { DIRECTIONS } from '../../trace.ts';
import type { FindingContext } from '../finding.ts';
import { isNotNormal } from '../notNormal.ts';
import { isAsEver } from './asEver.ts';
import { loadMoved, shedsLoad } from './movedLoad.ts';
import { keepsTime, runsAhead, runsFaster, runsRelieved, runsSlower } from './pace.ts';
import { hasSoftStart, startsAsEver, startsTell } from './readStart.ts';
import { ENDS_STROKES, SCALE_STROKES, type ScaleMemory } from './scaleMemory.ts';
import { readsStop, stallRise } from './stallRise.ts';

/** A smaller change than this is within what seasons do, natural logarithm. */
const LEAST = 0.12;
/** What an unrecorded supply, and an unrecorded temperature, may do on top, natural logarithm. */
const UNRECORDED_MORE: readonly [volts: number, degrees: number] = [0.06, 0.12];
/**
 * The least that counts where running and stall current fell alike and the room takes its usual time. No weaker supply
 * does that, and no warmth, which takes half as much off the stall as off the running current. Natural logarithm: a
 * guess, no source.
 */
const LEAST_FALL = 0.2;
/** The stall currents show at least and at most this part of the running current's change. */
const LIKE = { least: 0.75, most: 1.35 };
/**
 * Where running and stall current both fell to a third (natural logarithm), they need not agree: what is left is the
 * sensor's own reading.
 */
const COLLAPSED = -1;
/** While a warning is open, these lower limits are enough for it to go on. */
const STILL = { least: 0.05, like: { least: 0.4, most: 2.5 } };

/**
 * By how much a side's sensor seems to have changed its scale (natural logarithm); null: it does not seem so. Friction
 * moves the running current alone, because the current at standstill is V/R; a wrong scale moves inrush and stall as
 * well. Takes the stroke into the memory: to be called once for each.
 */
export function scaleChange(context: FindingContext, side: string): number | null {
  const memory = context.state.scale[side];
  if (memory === undefined) return null;
  noteStroke(context, side, memory);
  const judged = context.residual(side, 'runningAmps');
  if (judged === null) return null;
  const running = median(memory.running);
  const isSaid = isInDoubt(context, side);
  if (!isSaid && (isExplained(context, side, running) || isOneWay(memory, running))) return null;
  const stall = running > 0 && hasSoftStart(context, side) ? null : stallRise(context, side);
  if (stall === null) return null;
  const agrees = agree(running, stall, isSaid ? STILL.like : LIKE);
  const isFall = running < 0 && agrees && readsStop(context, side) && keepsTime(memory);
  const least = isSaid
    ? STILL.least
    : Math.min(isFall ? LEAST_FALL : Infinity, leastChange(context, side, running));
  if (Math.abs(running) < least || stopStands(context, side, running)) return null;
  if (startsAsEver(context, side, running)) return null;
  if ((running > 0 ? worksOtherwise : worksLess)(context, side)) return null;
  // A badly read start agrees by chance now and then.
  if (!readsStop(context, side) && (running < 0 ? shedsLoad : loadMoved)(context, side)) return null;
  const isRead = isSaid || readsStop(context, side) || startsTell(context, side, running);
  return agrees && isRead ? running : null;
}

/** What is remembered of a stroke, and the measure that it comes from. */
const REMEMBERED = [
  ['running', 'runningAmps'],
  ['inrush', 'inrushAmps'],
  ['endStop', 'endStopAmps'],
  ['duration', 'durationS'],
] as const;

function noteStroke(
  { state, analysis, direction, residual }: FindingContext,
  side: string,
  memory: ScaleMemory,
): void {
  const measured = analysis.sides[side];
  if (measured === undefined) return;
  const standsStill = stallsAsEver(channelOf(state, side, direction), analysis) && endsAtStandstill(measured);
  const [start, stop] = [residual(side, 'inrushAmps'), residual(side, 'endStopAmps')];
  memory.startDeviation = start?.deviation ?? memory.startDeviation;
  if (start !== null && stop !== null && standsStill)
    memory.ends[direction] = [
      ...memory.ends[direction],
      { start: rawRise(start), stop: rawRise(stop) },
    ].slice(-ENDS_STROKES);
  for (const [key, measure] of REMEMBERED) {
    const judged = residual(side, measure);
    if (judged === null || (key === 'endStop' && !standsStill)) continue;
    memory[key].push(rawRise(judged));
    if (memory[key].length > SCALE_STROKES) memory[key].shift();
    if (key === 'running') memory.ways = [...memory.ways, direction].slice(-SCALE_STROKES);
  }
}

/**
 * The rise without the allowance for weather that was read off the copper: a wrong scale moves that reading too, and
 * would explain itself.
 */
function rawRise({ rise, byCopper }: Residual): number {
  return rise + byCopper;
}

/** Whether a warning doubts this side's record, or the scale of all sides. */
function isInDoubt({ state }: FindingContext, side: string): boolean {
  return state.open.some(
    ({ kind, side: whose, evidence }) =>
      kind === 'sensor-doubt' && (whose === side || (whose === null && evidence.doubt === 'scale')),
  );
}

/**
 * Whether an open warning explains a higher current. No trouble raises the current at standstill: where start and stop
 * are both well read and rose alike, nothing explains it.
 */
function isExplained(context: FindingContext, side: string, running: number): boolean {
  if (running <= 0 || !isNotNormal(context.state)) return false;
  if (!readsStop(context, side) || !startsTell(context, side, running)) return true;
  const { inrush, endStop } = context.state.scale[side];
  return [inrush, endStop].some((standstill) => !agree(running, median(standstill), LIKE));
}

/**
 * Whether a stall moved as the running current did, or both fell so low that it does not matter. Natural logarithms.
 */
function agree(running: number, stall: number, like: typeof LIKE): boolean {
  const ratio = stall / running;
  return Math.max(running, stall) < COLLAPSED || (ratio > like.least && ratio < like.most);
}

/** Whether a side that draws more runs at another pace than it did, which no sensor makes it do. */
function worksOtherwise(context: FindingContext, side: string): boolean {
  return runsFaster(context, side) || runsSlower(context, side);
}

/**
 * Whether a side that draws less has less to do: it lost load to the other, or it runs much faster. The latter counts
 * where its start is held low by a controller and so fell with the load.
 */
function worksLess(context: FindingContext, side: string): boolean {
  return runsAhead(context, side) || (hasSoftStart(context, side) && runsRelieved(context.state.scale[side]));
}

/**
 * A scale is the same in both directions: strokes of either must show at least this part of the change. A guess, no
 * source.
 */
const BACK_PART = 0.4;

function isOneWay({ running, ways }: ScaleMemory, change: number): boolean {
  return DIRECTIONS.some((way) => {
    const own = running.filter((_, i) => ways[i] === way);
    return own.length > 0 && median(own) / change < BACK_PART;
  });
}

/**
 * If another side moved by less than this part, this one moved alone, which neither supply nor weather does. A guess,
 * no source.
 */
const ALONE_PART = 1 / 3;

/**
 * The least change that counts. Unrecorded cold and an unrecorded supply move the stall current too, on all sides: then
 * the change must be larger, unless another side runs as ever.
 */
function leastChange({ state, conditions }: FindingContext, side: string, running: number): number {
  const isAlone = state.room.sides.some((other) => {
    const rises = state.scale[other].running;
    return other !== side && rises.length === SCALE_STROKES && Math.abs(median(rises) / running) < ALONE_PART;
  });
  if (isAlone) return LEAST;
  return LEAST + UNRECORDED_MORE.reduce((sum, more, i) => sum + (conditions[i] === null ? more : 0), 0);
}

/**
 * Whether this stroke's stall draws about what it did, which speaks against a changed scale. (Which side stalls first
 * moves it too, because the supply sags less under one motor than under two, but by less than a scale would.)
 */
function stopStands({ residual }: FindingContext, side: string, running: number): boolean {
  const stop = residual(side, 'endStopAmps');
  return stop !== null && isAsEver(rawRise(stop), running);
}
