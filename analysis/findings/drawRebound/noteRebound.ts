import { type Channel, isReady } from '../../baseline/channel.ts';
import { type Conditions, regressors } from '../../baseline/conditions.ts';
import { MEASURE_INDEX } from '../../measures.ts';
import { channelOf } from '../../roomState.ts';
import { type FindingContext, openOf } from '../finding.ts';
import type { Origin, ReboundMemory, StrokeRise } from './reboundMemory.ts';
import { FIRST_AFTER } from './workCourse.ts';

/** Strokes before a service, half a year of them, that a climb after it is held against. */
const KEPT_BEFORE = 30;
/** Strokes after a service, a year of them, in which a climb may be laid to it. */
const KEPT_AFTER = 60;

/** A service ends one stretch and begins another. */
export function noteService(memory: ReboundMemory, kind: string, side: string | null): void {
  if (memory.after !== null && memory.after.length > 0) memory.before = memory.after.slice(-KEPT_BEFORE);
  memory.after = [];
  memory.kind = kind;
  memory.side = side;
}

/** Takes a stroke into the memory; must come before the baseline learns from it. */
export function noteStroke(context: FindingContext): void {
  const memory = context.state.rebound;
  for (const side of context.state.room.sides) noteReference(context, side);
  const rise = context.state.room.sides.map((side) => riseOf(context, side));
  if (rise.every((own) => own === null)) return;
  const { before, after } = memory;
  if (after === null) {
    before.push(rise);
    if (before.length > KEPT_BEFORE) before.shift();
    return;
  }
  if (after.length >= KEPT_AFTER) {
    // A later climb is laid to nothing any more; what was said goes on until the draw has come down again.
    if (openOf(context.state, 'draw-rebound').length === 0) return;
    after.splice(FIRST_AFTER, 1);
  }
  after.push(rise);
}

/** Once a side's normal is known, the strokes that it was learnt from tell how it was before a service too. */
function noteReference(
  { state: { rebound, room, channels }, direction }: FindingContext,
  side: string,
): void {
  const channel = channels.find((one) => one.side === side && one.direction === direction);
  if (channel === undefined || rebound.after !== null || isKnown(rebound, channel)) return;
  const origin = originOf(rebound, channel);
  if (origin === null) return;
  const at = room.sides.indexOf(side);
  const learnt = channel.values.flatMap((values, i): StrokeRise[] => {
    const value = values[MEASURE_INDEX.runningAmps];
    if (value === null) return [];
    const rise = value - expectedBy(origin, channel.conditions[i]);
    return [room.sides.map((_, place) => (place === at ? rise : null))];
  });
  rebound.before = [...learnt, ...rebound.before].slice(-KEPT_BEFORE);
}

function riseOf(context: FindingContext, side: string): number | null {
  const channel = channelOf(context.state, side, context.direction);
  const measured = context.analysis.sides[side];
  if (channel === undefined || measured === undefined) return null;
  const origin = originOf(context.state.rebound, channel);
  if (origin === null) return null;
  return Math.log(measured.runningAmps) - expectedBy(origin, context.sideConditions(side));
}

function expectedBy({ coefficients, weather }: Origin, conditions: Conditions): number {
  return regressors(conditions, weather).reduce((sum, x, i) => sum + x * coefficients[i], 0);
}

function keyOf({ side, direction }: Channel): string {
  return `${side}|${direction}`;
}

function isKnown(memory: ReboundMemory, channel: Channel): boolean {
  return memory.origin[keyOf(channel)] !== undefined;
}

function originOf(memory: ReboundMemory, channel: Channel): Origin | null {
  const key = keyOf(channel);
  const fit = channel.fits[MEASURE_INDEX.runningAmps];
  if (memory.origin[key] === undefined && isReady(channel) && fit !== null)
    memory.origin[key] = { coefficients: fit.coefficients, weather: channel.weather };
  return memory.origin[key] ?? null;
}
