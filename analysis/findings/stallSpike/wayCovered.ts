import { comesToStop } from '../../measures.ts';
import type { Direction } from '../../trace.ts';
import type { FindingContext } from '../finding.ts';
import { WHOLE } from '../shortTravel/movementParts.ts';
import { stopsUsually } from '../shortTravel/shortSigns.ts';
import { isByWeakMagnets } from '../weakMagnets.ts';
import type { Standing } from './spikeMemory.ts';

/** The part of the travel that a stroke went over, 0 fully retracted to 1 fully extended. */
export interface WayCovered {
  readonly inner: number;
  readonly outer: number;
  /**
   * How far off a place on it may be because its begin and end are not known exactly, parts of the travel; 0: it went
   * all the way.
   */
  readonly unsure: number;
}

/** A stroke that was quicker than a whole one by this many standard deviations went over a part of the way. */
const SIGMAS = 2.5;
/**
 * Two estimates of where a stroke ended contradict each other if they are further apart than this part of the travel
 * and `SIGMAS` standard deviations.
 */
const SAME_END = 0.05;

/** Where a whole stroke ends, on the travel. */
const END: Readonly<Record<Direction, number>> = { retract: 0, extend: 1 };

/**
 * The part of the travel that a stroke went over: its length from how much of its usual time the stroke took, its place
 * from one of its ends. That is the stop of this direction, or `before`, where the stroke before it left the room. Null
 * where the stroke went over a part and neither end tells which.
 */
export function wayCovered(context: FindingContext, before: Standing | null): WayCovered | null {
  const { state, analysis, direction } = context;
  const part = partOf(context);
  if (part === null) return { inner: 0, outer: 1, unsure: 0 };
  const { length, deviation } = part;
  const by = length * deviation;
  const towards = direction === 'extend' ? 1 : -1;
  const from = isStillThere(context, before) ? before : null;
  const reached = from === null ? END[direction] : from.place + towards * length;
  const unsure = Math.hypot(by, from?.unsure ?? 0);
  const isAtEnd = Math.abs(reached - END[direction]) < SAME_END + SIGMAS * unsure;
  if (isAtEnd && comesToStop(analysis) && stopsUsually(state.travel[direction]))
    return spanOf(END[direction] - towards * length, END[direction], by);
  return from === null ? null : spanOf(from.place, reached, unsure);
}

/** Where the room stands after a stroke that went over this way; null: not known. */
export function standingAfter({ event, direction }: FindingContext, way: WayCovered | null): Standing | null {
  if (way === null) return null;
  const { inner, outer, unsure } = way;
  const place = direction === 'extend' ? outer : inner;
  return { place, unsure: place === END[direction] ? 0 : unsure, atMs: event.atMs };
}

/** Where a position along a stroke's own way lies on the travel, both 0 to 1. */
export function onTravel({ inner, outer }: WayCovered, position: number): number {
  return inner + position * (outer - inner);
}

/** Whether a stroke surely went over a place and `reach` to either side of it, parts of the travel. */
export function passes({ inner, outer, unsure }: WayCovered, place: number, reach: number): boolean {
  if (unsure === 0 && inner === 0 && outer === 1) return true;
  return place - reach > inner + unsure && place + reach < outer - unsure;
}

/** The least part of the way that a stroke may have gone, judged by its time; 1 where that is not known. */
export function shortestWay(context: FindingContext): number {
  const time = longestTime(context);
  return time === null ? 1 : Math.min(1, Math.exp(time.residual - SIGMAS * time.deviation));
}

/**
 * The part of the way that a stroke went over, judged by its time, and the standard deviation of its natural logarithm.
 * Null where it went all the way, or where that is not known.
 */
function partOf(context: FindingContext): { length: number; deviation: number } | null {
  const time = longestTime(context);
  if (time === null) return null;
  const { residual, deviation } = time;
  if (residual > Math.min(Math.log(WHOLE.least), -SIGMAS * deviation) || isByWeakMagnets(context, -residual))
    return null;
  return { length: Math.exp(residual), deviation };
}

/**
 * Of the side that took longest for its usual time: the natural logarithm of that ratio, with its deviation; null: not
 * known.
 */
function longestTime(context: FindingContext): ReturnType<FindingContext['residual']> {
  const times = context.state.room.sides
    .map((side) => context.residual(side, 'durationS'))
    .filter((time) => time !== null);
  return times.length === 0 ? null : times.reduce((a, b) => (b.residual > a.residual ? b : a));
}

/** Whether, as far as is known, nothing moved the room since `before`: no unread record, and no stroke in between. */
function isStillThere({ state, event }: FindingContext, before: Standing | null): before is Standing {
  return before !== null && !state.travel.followsUnread && event.atMs - before.atMs === state.stay.restedMs;
}

function spanOf(a: number, b: number, unsure: number): WayCovered {
  const [inner, outer] = [Math.min(a, b), Math.max(a, b)];
  return { inner: Math.max(0, inner), outer: Math.min(1, outer), unsure };
}
