import { nameAll, nameSide, wayOf } from '../../names.ts';
import { median } from '../../statistics/median.ts';
import type { Warning } from '../../warning.ts';
import { isOverAfter, noteComing, saidAnew } from '../comesBack.ts';
import { type Finding, type FindingAnswer, type FindingContext, NOTHING, openOf } from '../finding.ts';
import { isPart } from '../isPart.ts';
import {
  type FoundStretch,
  type HeavyStretch,
  isSamePlace,
  isStretchedLately,
  stretchIsOver,
  takeStretches,
} from './heavyStretch.ts';
import { type LoadShift, restLoad } from './loadShift.ts';

const SERVICE_RISE = 0.2;
const STOP_RISE = 0.6;
const GOING_BACK = 0.06;
const BACK_PART = 0.4;
/** What still draws so much of what was said has not come back, whatever cold a stall that is read badly now tells of. */
const AS_HIGH_PART = 0.7;
/**
 * Nobody is called for less than this part of the running current: how a coach is loaded and where it stands makes some per
 * cent for weeks, which is no wear. A guess, no source.
 */
const LEAST_SAID = 0.09;
/**
 * A small rise may be a frost of some days that nobody recorded, or the first strokes after a winter: it is said once it has
 * lasted for so many strokes. Guesses, no source.
 */
const SMALL = { rise: 0.12, strokes: 7 };
/** A side belongs to the rise when it rose by at least this part of what the worst side did. */
const SAME_PART = 0.5;
const SAME_PART_STILL = 0.35;
const SAME_PART_NOW = 0.7;
/** This many strokes back within their normal clear it. */
const CLEAR_STROKES = 4;
/** A stroke that lies higher than this is no quiet one, natural logarithm. A guess, no source. */
const STILL_UP = 0.06;

/**
 * What a peak of so many parts of the running current may add to it by itself: once per turn of the gear it takes much of
 * the travel, elsewhere a little. A travel that ends early leaves out a part of the course. Guesses, no source.
 */
const BY_SWING = 0.8;
const BY_PEAKS = 0.3;
const MOST_BY_PEAKS = 0.12;
const BY_SHORT_TRAVEL = 0.12;
/** A side that comes late, or starts late, leaves the other to drag the room meanwhile. A guess, no source. */
const BY_LATE_SIDE = 0.4;

/** Whether a side that is late may have caused all of what is said of another's rise. */
export function lateSideExplains(open: Warning): boolean {
  return saidPercent(open) / 100 <= BY_LATE_SIDE;
}

/** By how many per cent a rise was said to stand above normal; NaN: of a side that stood still. */
function saidPercent({ evidence }: Warning): number {
  return evidence.risePercent ?? Number.NaN;
}

/** How much of a rise the troubles that are open already explain, as a part of the running current. */
function explainedRise({ state }: FindingContext, side: string): number {
  const explained = state.open.map((open) => {
    if (open.kind === 'short-travel') return BY_SHORT_TRAVEL;
    if (open.kind === 'late-side') return open.side === side ? 0 : BY_LATE_SIDE;
    if (open.kind !== 'stall-spike' || open.side !== side) return 0;
    const height = (open.evidence.heightPercent ?? 0) / 100;
    if (open.pattern === 'once-per-turn') return BY_SWING * height;
    return open.pattern === 'scattered' ? Math.min(MOST_BY_PEAKS, BY_PEAKS * height) : 0;
  });
  return Math.max(0, ...explained);
}

/**
 * The running current has risen beyond the room's own normal, over the whole travel or a stretch of it. `side` is null where
 * both rose alike. Held back while the load merely moved from one side to the other, which `uneven-sides` says. A stretch
 * that stands far above what the whole has risen by is what is said: where it is long, the middle of what is drawn lies
 * within it or near it, and rises as well.
 */
export function risingDraw(context: FindingContext, load: LoadShift): FindingAnswer {
  const { risings } = context.state.load;
  const isSaid = openOf(context.state, 'rising-draw').length > 0;
  noteComing(risings, Math.max(0, ...latestRises(context)) > Math.max(STILL_UP, load.deviation));
  const answer = judged(context, load);
  if (!isSaid && answer.present.length > 0) saidAnew(risings);
  return answer;
}

function latestRises({ state }: FindingContext): number[] {
  return state.room.sides.map((side) => state.load.sides[side].rises.at(-1) ?? 0);
}

function judged(context: FindingContext, load: LoadShift): FindingAnswer {
  // Where on the travel a part of a movement is high, its own course does not tell.
  const isOfParts = isPart(context);
  const found = isOfParts ? [] : takeStretches(context);
  const stretches = found.filter(({ lasts }) => lasts);
  const [open] = openOf(context.state, 'rising-draw');
  const isOfStretch = open?.evidence.from !== undefined;
  if (isOfStretch && isOfParts) return NOTHING;
  const { risings } = context.state.load;
  if (open !== undefined && !isOfStretch && isBack(context, open, load)) {
    if (!isOverAfter(risings, CLEAR_STROKES, 0)) return { present: [open], gone: [] };
    restLoad(context.state.load);
    return { present: [], gone: [open] };
  }
  const unexplained = load.risen.filter(
    (side) =>
      riseOf(context, load, side) > Math.max(leastSaid(context, side, open), explainedRise(context, side)),
  );
  const raised = unexplained.length > 0 && !load.moved;
  const rise = Math.max(0, ...[...load.rises.values()].map(Math.expm1));
  if (isFarAbove(stretches, rise)) return { present: [ofStretches(context, stretches)], gone: [] };
  // The next strokes tell whether it lasts.
  if (open === undefined && isFarAbove(found, rise)) return NOTHING;
  if (isOfStretch && STAYS * rise < saidPercent(open) / 100 && !isOverFor(context, open))
    return { present: [open], gone: [] };
  // What only one direction feels is said as it was by the strokes of the other.
  if (open !== undefined && open.direction !== null && !raised) return { present: [open], gone: [] };
  if (raised || (open !== undefined && !isOfStretch))
    return { present: [finding(context, load, isOfStretch ? undefined : open)], gone: [] };
  if (open !== undefined && isOfStretch && isOverFor(context, open)) return { present: [], gone: [open] };
  return stretches.length === 0 ? NOTHING : { present: [ofStretches(context, stretches)], gone: [] };
}

/**
 * By what part a side draws more that is not said yet: where it is said to have taken load from the other, what both draw
 * more together, as the rest is that load.
 */
function riseOf({ state }: FindingContext, { rises }: LoadShift, side: string): number {
  const own = Math.expm1(rises.get(side) ?? 0);
  const hasTaken = openOf(state, 'uneven-sides').some((open) => open.side === side);
  const all = [...rises.values()].map(Math.expm1);
  return hasTaken ? Math.min(own, all.reduce((sum, rise) => sum + rise, 0) / all.length) : own;
}

/** What a side must have risen by to be told of, as a part of its running current; while it is said already anything will do. */
function leastSaid({ state }: FindingContext, side: string, open: Warning | undefined): number {
  if (open !== undefined) return 0;
  return state.load.sides[side].run < SMALL.strokes ? SMALL.rise : LEAST_SAID;
}

/** Where a stretch is so many times as high as what the whole travel takes more, the rise is of the stretch. A guess, no source. */
const STANDS_OUT = 3;
const STAYS = 2;

function isFarAbove([highest]: readonly FoundStretch[], rise: number): boolean {
  return highest !== undefined && highest.part > STANDS_OUT * rise;
}

/** A stretch is over where the way that it was found on is as ever; `open`: what was said of it. */
function isOverFor(context: FindingContext, { side, evidence }: Warning): boolean {
  const sides = side === null ? context.state.room.sides : [side];
  return evidence.way === context.direction && sides.every((name) => stretchIsOver(context, name));
}

const HIGH_STRETCH = 0.6;

/** `stretches`: at least one, the highest first. */
function ofStretches({ state, direction }: FindingContext, stretches: readonly HeavyStretch[]): Finding {
  const { sides } = state.room;
  const [highest] = stretches;
  const { from, to, part } = highest;
  const isAlike = (side: string) => {
    const own = stretches.find((other) => other.side === side);
    if (own === undefined) return isStretchedLately({ state }, side);
    return own.part >= SAME_PART * highest.part && isSamePlace(own, highest);
  };
  const isOfAll = sides.length > 1 && sides.every(isAlike);
  const percent = (of: number) => Math.round(100 * of);
  const who = isOfAll ? nameAll(sides) : nameSide(highest.side, sides);
  return {
    kind: 'rising-draw',
    side: isOfAll ? null : highest.side,
    direction: null,
    position: (from + to) / 2,
    pattern: null,
    severity: part >= HIGH_STRETCH ? 'service' : 'watch',
    headline: `The running current of ${who} is up to ${percent(part)} % above this room's own normal between ${percent(from)} % and ${percent(to)} % of the way out.`,
    evidence: {
      risePercent: percent(part),
      from: Math.round(1000 * from) / 1000,
      to: Math.round(1000 * to) / 1000,
      way: direction,
    },
  };
}

function isBack({ state }: FindingContext, open: Warning, load: LoadShift): boolean {
  const sides = open.side === null ? state.room.sides : [open.side];
  return sides.every((side) => {
    const { rises, raw } = state.load.sides[side];
    if (rises.length < CLEAR_STROKES) return false;
    const said = Math.log1p(saidPercent(open) / 100);
    const isAsHigh = median(raw.slice(-CLEAR_STROKES)) > AS_HIGH_PART * said;
    return !isAsHigh && median(rises.slice(-CLEAR_STROKES)) < Math.max(0.03, load.deviation);
  });
}

function finding(context: FindingContext, load: LoadShift, open: Warning | undefined): Finding {
  const { room } = context.state;
  const worst = [...load.rises].reduce((a, b) => (b[1] > a[1] ? b : a));
  // What was said of both stays of both, and what was said of one of that one, until it is plainly otherwise.
  const part = open === undefined ? SAME_PART : open.side === null ? SAME_PART_STILL : SAME_PART_NOW;
  const all = [...load.rises.values()].every((rise) => rise >= part * worst[1]);
  const side = room.sides.length > 1 && all && load.rises.size > 1 ? null : worst[0];
  const direction = load.oneWay.includes(worst[0]) ? context.direction : null;
  const rise = Math.expm1(worst[1]);
  // On its way back to normal it goes on as it was said, until it is cleared.
  if (open !== undefined && rise < Math.max(GOING_BACK, (BACK_PART * saidPercent(open)) / 100)) return open;
  const percent = Math.round(100 * rise);
  const measured = context.residual(worst[0], 'runningAmps');
  // Nor is a stroke that ran as ever what shows it.
  if (open !== undefined && measured !== null && Math.expm1(measured.rise) < BACK_PART * rise) return open;
  const who =
    side === null ? (room.sides.length > 1 ? nameAll(room.sides) : 'the motor') : nameSide(side, room.sides);
  return {
    kind: 'rising-draw',
    side,
    direction,
    position: null,
    pattern: null,
    severity: rise >= STOP_RISE ? 'stop' : rise >= SERVICE_RISE ? 'service' : 'watch',
    headline: `The running current of ${who} is ${percent} % above this room's own normal${direction === null ? '' : ` going ${wayOf(direction)}`}.`,
    evidence: {
      risePercent: percent,
      sigmas: measured === null ? null : Math.round((10 * measured.rise) / measured.deviation) / 10,
      expectedAmps: measured === null ? null : Math.round(100 * measured.expected) / 100,
      measuredAmps: Math.round(100 * (context.analysis.sides[worst[0]]?.runningAmps ?? 0)) / 100,
    },
  };
}
