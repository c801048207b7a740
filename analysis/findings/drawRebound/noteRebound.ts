import { type Channel, isReady } from '../../baseline/channel.ts';
import { regressors } from '../../baseline/conditions.ts';
import { MEASURE_INDEX } from '../../measures.ts';
import { channelOf } from '../../roomState.ts';
import { type FindingContext, openOf } from '../finding.ts';
import type { Origin, ReboundMemory } from './reboundMemory.ts';
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

function riseOf(context: FindingContext, side: string): number | null {
  const channel = channelOf(context.state, side, context.direction);
  const measured = context.analysis.sides[side];
  if (channel === undefined || measured === undefined) return null;
  const origin = originOf(context.state.rebound, channel);
  if (origin === null) return null;
  const row = regressors(context.sideConditions(side), origin.weather);
  const expected = row.reduce((sum, x, i) => sum + x * origin.coefficients[i], 0);
  return Math.log(measured.runningAmps) - expected;
}

function originOf(memory: ReboundMemory, channel: Channel): Origin | null {
  const key = `${channel.side}|${channel.direction}`;
  const fit = channel.fits[MEASURE_INDEX.runningAmps];
  if (memory.origin[key] === undefined && isReady(channel) && fit !== null)
    memory.origin[key] = { coefficients: fit.coefficients, weather: channel.weather };
  return memory.origin[key] ?? null;
}
