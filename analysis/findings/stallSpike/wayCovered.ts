import { comesToStop } from '../../measures.ts';
import type { Direction } from '../../trace.ts';
import type { FindingContext } from '../finding.ts';
import { WHOLE } from '../shortTravel/movementParts.ts';
import { stopsUsually } from '../shortTravel/shortSigns.ts';
import { isByWeakMagnets } from '../weakMagnets.ts';
import type { Standing } from './spikeMemory.ts';

/** What of the travel a stroke went over, 0 fully retracted to 1 fully extended. */
export interface WayCovered {
  readonly inner: number;
  readonly outer: number;
  /** How far a place on it may be off for not knowing where it began and ended, parts of the travel; 0: it went all the way. */
  readonly unsure: number;
}

/** A stroke that took less of its time than a whole one by so many deviations went over a part of the way. */
const SIGMAS = 2.5;
/** Two tellings of where a stroke ended that are further apart, parts of the travel, and as many deviations, contradict each other. */
const SAME_END = 0.05;

/** Where a whole stroke ends, on the travel. */
const END: Readonly<Record<Direction, number>> = { retract: 0, extend: 1 };

/**
 * What of the travel a stroke went over, told by how much of its usual time it took and by one of its ends: the stop that this
 * direction comes to, or the place where the stroke before it, known to it as `before`, left the room. Null where it was a part
 * and neither tells of which.
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

/** Where the room stands after a stroke that went over so much; null: nobody knows. */
export function standingAfter({ event, direction }: FindingContext, way: WayCovered | null): Standing | null {
  if (way === null) return null;
  const { inner, outer, unsure } = way;
  const place = direction === 'extend' ? outer : inner;
  return { place, unsure: place === END[direction] ? 0 : unsure, atMs: event.atMs };
}

/** Where a place of a stroke's own way lies on the travel. */
export function onTravel({ inner, outer }: WayCovered, position: number): number {
  return inner + position * (outer - inner);
}

/** Whether a stroke surely went over a place and so much to either side of it. */
export function passes({ inner, outer, unsure }: WayCovered, place: number, reach: number): boolean {
  if (unsure === 0 && inner === 0 && outer === 1) return true;
  return place - reach > inner + unsure && place + reach < outer - unsure;
}

/** The least part of its way that a stroke may have made by its time; 1 where nobody knows. */
export function shortestWay(context: FindingContext): number {
  const time = longestTime(context);
  return time === null ? 1 : Math.min(1, Math.exp(time.residual - SIGMAS * time.deviation));
}

/** How much of the way a stroke made by its time, and how sure that is, natural logarithm; null: it was whole, or nobody knows. */
function partOf(context: FindingContext): { length: number; deviation: number } | null {
  const time = longestTime(context);
  if (time === null) return null;
  const { residual, deviation } = time;
  if (residual > Math.min(Math.log(WHOLE.least), -SIGMAS * deviation) || isByWeakMagnets(context, -residual))
    return null;
  return { length: Math.exp(residual), deviation };
}

/** The time of the side that was under way longest against its usual one, natural logarithm; null: nobody knows. */
function longestTime(context: FindingContext): ReturnType<FindingContext['residual']> {
  const times = context.state.room.sides
    .map((side) => context.residual(side, 'durationS'))
    .filter((time) => time !== null);
  return times.length === 0 ? null : times.reduce((a, b) => (b.residual > a.residual ? b : a));
}

/** Whether nothing was recorded in between, as far as that is known. */
function isStillThere({ state, event }: FindingContext, before: Standing | null): before is Standing {
  return before !== null && !state.travel.followsUnread && event.atMs - before.atMs === state.stay.restedMs;
}

function spanOf(a: number, b: number, unsure: number): WayCovered {
  const [inner, outer] = [Math.min(a, b), Math.max(a, b)];
  return { inner: Math.max(0, inner), outer: Math.min(1, outer), unsure };
}
