import { asOfTwelveVolts, REFERENCE_C, REFERENCE_VOLTS } from '../../baseline/conditions.ts';
import { PRIORS } from '../../baseline/priors.ts';
import type { Evidence } from '../../evidence.ts';
import type { StrokeEvent } from '../../history.ts';
import type { SideMeasures } from '../../measures.ts';
import { LEAST_STANDSTILL } from '../../motor/turns.ts';
import { nameSide } from '../../names.ts';
import type { RoomState } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { DIRECTIONS, type RoomDescription } from '../../trace.ts';
import { type FindingAnswer, type FindingContext, NOTHING, openOf } from '../finding.ts';
import { allHeldAtOneValue } from '../sensorDoubt/cutLevel.ts';
import { aboveModel, overModel } from './heavyForModel.ts';
import type { HeavyMemory } from './heavyMemory.ts';

/** Far above what a healthy side stays under: more than cold and a crooked stand add to one near its rating. */
const FAR_ABOVE = 1.2;
const NO_MORE = 1.1;
const STOP_ABOVE = 2;
/** It is said within the first strokes or never: later a rise is `rising-draw`. */
const FIRST_STROKES = 8;
const FEWEST = 3;

/**
 * Running current that no side should need, amperes, where the room's own rating is not known: a third above the 12 A of one
 * of several sides, or of a side of an in-wall drive, or the 30 A of a single motor, that rooms in health are known to draw.
 * Common practice, no source. A motor that runs at well over a third of what it draws stalled is overloaded in any drive
 * (best efficiency lies far below: maker's data sheets of permanent-magnet motors).
 */
const SHOULD_NEED = { sideAmps: 16, singleAmps: 40 };
const OVERLOADED_PART = 0.5;
/** A side that draws so much of what no drive should need is held to be overloaded a little sooner. */
const MUCH_PART = 0.7;
export const OVERLOADED_WITH_MUCH = 0.42;
/**
 * The current at standstill is V/R at the start and at the stop alike: an end that draws less than this part of the start is
 * a seal that was pressed, or a drive that was switched off as it rose. A hot winding and a tired battery leave so much.
 */
const STALL_OF_START = 0.85;
/** So near its stall a motor crawls: then one stall that was read is enough. */
const CRAWLING_PART = 0.65;

/**
 * The running current is far above the rated one from the first strokes on. The median of a side's first strokes in the
 * direction that takes more is told against `ratedAmps`, the cold allowed for; and against what rooms of the same coach
 * model need, where there are any.
 */
export function heavyRoom(context: FindingContext): FindingAnswer {
  const { state } = context;
  const seen = state.usable.extend + state.usable.retract;
  const [open] = openOf(state, 'heavy-room');
  if (open === undefined && seen > FIRST_STROKES) return NOTHING;
  remember(context);
  const ratios = state.room.sides.map((side) => ratioOf(context, side));
  const heavy = state.room.sides.filter(
    (_, i) => (ratios[i] ?? 0) >= (open === undefined ? FAR_ABOVE : NO_MORE),
  );
  if (heavy.length === 0) return open === undefined ? NOTHING : { present: [], gone: [open] };
  const worst = Math.max(...ratios.map((ratio) => ratio ?? 0));
  const every = heavy.length === state.room.sides.length && heavy.length > 1;
  const side = every ? null : heavy[0];
  const amps = Math.round(10 * Math.max(...heavy.map((name) => drawn(state.heavy[name]).most))) / 10;
  const who = side === null ? 'Each side' : nameSide(side, state.room.sides);
  const { should, evidence } = standard(context, heavy, amps);
  const headline = `${who} draws ${every ? 'up to ' : ''}${amps} A; ${should}. It has been so from the first strokes on.`;
  return {
    present: [
      {
        kind: 'heavy-room',
        side,
        direction: null,
        position: null,
        pattern: null,
        severity: worst >= STOP_ABOVE ? 'stop' : 'service',
        headline: `${headline[0].toUpperCase()}${headline.slice(1)}`,
        evidence: { runningAmps: amps, ...evidence },
      },
    ],
    gone: [],
  };
}

/** What the heavy sides are told against, in words and in numbers; `amps`: what they draw. */
function standard(
  context: FindingContext,
  heavy: readonly string[],
  amps: number,
): { should: string; evidence: Evidence } {
  const { ratedAmps } = context.state.room;
  const times = (least: number) => Math.round((100 * amps) / least) / 100;
  if (heavy.every((name) => byModel(context, name))) {
    const model = modelAmps(context, heavy);
    const should = `rooms of the same model need about ${model} A`;
    return { should, evidence: { modelAmps: model, timesModel: times(model) } };
  }
  const loads = heavy.map((name) => loadOf(context.state.heavy[name], context.state.room));
  if (ratedAmps === null && loads.every(({ needed, overload }) => overload > needed)) {
    const stall = Math.round(10 * Math.min(...loads.map(({ stallAmps }) => stallAmps))) / 10;
    const should = `it stalls at ${stall} A already, and no motor of any drive should run so near its stall`;
    return { should, evidence: { stallAmps: stall, partOfStall: times(stall) } };
  }
  const limit = ratedAmps ?? shouldNeed(context.state.room);
  const should = `a healthy one of this ${ratedAmps === null ? 'kind of drive' : 'room'} should stay under ${limit} A`;
  return { should, evidence: { limitAmps: limit, timesLimit: times(limit) } };
}

function remember(context: FindingContext): void {
  const { state, analysis, event, doubtful } = context;
  for (const [side, measured] of Object.entries(analysis.sides)) {
    const memory = state.heavy[side];
    if (memory === undefined || doubtful.has(side)) continue;
    memory.amps[context.direction].push(withoutCold(measured.runningAmps, event));
    const stall = stallOf(measured);
    if (stall !== null) memory.stall.push(stall / partOfReference(context));
    memory.mostAmps = Math.max(memory.mostAmps, measured.inrushAmps / partOfReference(context));
    const above = aboveModel(context, side);
    if (above !== null) memory.above.push(above);
    for (const list of [...Object.values(memory.amps), memory.stall, memory.above])
      if (list.length > FIRST_STROKES) list.shift();
  }
}

/** What a side draws, amperes, less what cold adds. */
export function withoutCold(amps: number, { ambientC }: StrokeEvent): number {
  const colder = Math.min(0, (ambientC ?? REFERENCE_C) - REFERENCE_C);
  return amps * Math.exp(-PRIORS.runningAmps.perDegree.mean * colder);
}

/** The supply of a stroke as a part of what values are brought to; 1 where nobody recorded it. */
function partOfReference({ state, analysis: { supplyVolts } }: FindingContext): number {
  if (supplyVolts === null) return 1;
  return asOfTwelveVolts(supplyVolts, state.room.nominalVolts) / REFERENCE_VOLTS;
}

/**
 * What a side draws at standstill, amperes: only a stall that was held long enough to be read, for an inrush is over before
 * a slow logger sees its peak. Null where none was, and where a logger that woke late, after the start, leaves nothing to
 * hold an end against that rose little: then it is a seal as well as a stall.
 */
function stallOf({ endStopAmps, inrushAmps, runningAmps, phases, rateHz }: SideMeasures): number | null {
  if (endStopAmps === null || endStopAmps < STALL_OF_START * inrushAmps) return null;
  const holdsStart = phases.startS > 1 / (rateHz ?? Number.POSITIVE_INFINITY);
  const stallAmps = Math.max(inrushAmps, endStopAmps);
  return holdsStart || stallAmps >= LEAST_STANDSTILL * runningAmps ? stallAmps : null;
}

/** Heavy at `FAR_ABOVE`, whatever it is told against. */
function ratioOf(context: FindingContext, side: string): number | null {
  const { extend, retract } = context.state.heavy[side].amps;
  if (extend.length + retract.length < FEWEST) return null;
  return Math.max(ratioToDrive(context, side), ratioToModel(context, side));
}

/** Whether a room is heavy by its own rating, or by what its drive should need: nothing that others lent it has a say. */
export function isHeavyAlone(state: RoomState): boolean {
  return state.room.sides.some((side) => {
    const { extend, retract } = state.heavy[side].amps;
    return extend.length + retract.length >= FEWEST && ratioToDrive({ state }, side) >= FAR_ABOVE;
  });
}

/** Whether it is the model, more than rating or drive, that says a side is heavy. */
function byModel(context: FindingContext, side: string): boolean {
  return ratioToModel(context, side) > ratioToDrive(context, side);
}

/** A room's own rating that is not exceeded stands against what others say: it was made for more than they need. */
function ratioToModel({ state }: FindingContext, side: string): number {
  const { ratedAmps } = state.room;
  const isWithinRating = ratedAmps !== null && drawn(state.heavy[side]).most <= ratedAmps;
  const over = overModel(state, side);
  return isWithinRating || over === null ? 0 : FAR_ABOVE * Math.exp(over);
}

function modelAmps({ state }: FindingContext, sides: readonly string[]): number {
  const amps = sides.map((side) => median(state.heavy[side].above.map((stroke) => stroke.modelAmps)));
  return Math.round(10 * Math.max(...amps)) / 10;
}

/** One stroke of a direction may be an odd one. */
const FEWEST_EACH_WAY = 2;

/** Running amperes of a side in the direction that takes more and in the one that takes less; 0 where not yet known. */
function drawn({ amps }: HeavyMemory): { most: number; least: number } {
  const recorded = DIRECTIONS.map((direction) => amps[direction]).filter((list) => list.length > 0);
  const medians = recorded.map((list) => (list.length < FEWEST_EACH_WAY ? 0 : median(list)));
  return { most: Math.max(0, ...medians), least: Math.min(...medians) };
}

/**
 * Without a rating the drive's guess is asked of the direction that takes less: weight on the racks is felt both ways, a seal
 * or a slope one way. Other rooms of the model excuse nothing: they may be as heavy, and no motor bears more for that.
 */
function ratioToDrive({ state }: Pick<FindingContext, 'state'>, side: string): number {
  const { ratedAmps } = state.room;
  const memory = state.heavy[side];
  if (ratedAmps !== null) return drawn(memory).most / ratedAmps;
  const { needed, overload } = loadOf(memory, state.room);
  return FAR_ABOVE * Math.max(needed, allHeldAtOneValue(state.cut[side]) ? 0 : overload);
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
  const overload = memory.stall.length < 2 && part < CRAWLING_PART ? 0 : part / mostPart;
  return { needed, overload, stallAmps };
}
