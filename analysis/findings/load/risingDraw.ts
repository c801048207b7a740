import { mean } from 'simple-statistics';
import { nameAll, nameSide, wayOf } from '../../names.ts';
import { median } from '../../statistics/median.ts';
import type { Warning } from '../../warning.ts';
import { isOverAfter, noteComing, saidAnew } from '../comesBack.ts';
import { type Finding, type FindingAnswer, type FindingContext, NOTHING, openOf } from '../finding.ts';
import { isPart } from '../isPart.ts';
import { explainedRise, saidPercent } from './explainedRise.ts';
import { hasPlainlyMoved } from './hasMoved.ts';
import { takeStretches } from './heavyStretch.ts';
import { restLoad } from './loadMemory.ts';
import type { LoadShift } from './loadShift.ts';
import { isFarAbove, isOverFor, ofStretches, SAME_PART } from './risenStretch.ts';

/** Rises from which on the severity is `service` or `stop`, as parts of the normal current. Guesses, no source. */
const SERVICE_RISE = 0.2;
const STOP_RISE = 0.6;
/**
 * A rise is on its way back to normal below the first of these, or below this part of what the warning says. Guesses,
 * no source.
 */
const GOING_BACK = 0.06;
const BACK_PART = 0.4;
/**
 * A rise that is still this part of what the warning says has not come back, even if a badly read stall now tells of
 * cold.
 */
const AS_HIGH_PART = 0.7;
/**
 * No warning is opened for a rise below this part of the running current: how a coach is loaded and where it stands
 * make some per cent for weeks, which is no wear. A guess, no source.
 */
const LEAST_SAID = 0.09;
/**
 * A rise below this may be an unrecorded frost of some days, or the first strokes after a winter: a warning is opened
 * once it has lasted for this many strokes. Guesses, no source.
 */
const SMALL = { rise: 0.12, strokes: 7 };

/**
 * A side shares in the rise if it rose by this part of the worst side's rise: the first where the open warning is of
 * both sides, the second where it is of one. Guesses, no source.
 */
const SAME_PART_STILL = 0.35;
const SAME_PART_NOW = 0.7;
/** This many strokes in a row back within their normal clear the warning. */
const CLEAR_STROKES = 4;
/** As many of one direction clear a warning that names that direction. */
const CLEAR_ONE_WAY = 2;
/** A stroke that lies higher than this still shows the rise, natural logarithm. A guess, no source. */
const STILL_UP = 0.06;
/** How often a rise shows is told, when the warning opens, by these strokes, counted back from the latest. */
const TOLD_BY = [4, 3, 2, 1];

/**
 * The running current has risen beyond the room's own normal, over the whole travel or a stretch of it. `side` is null
 * where both rose alike. Held back while the load merely moved from one side to the other, which `uneven-sides` tells.
 * Where a stretch stands far above the rise of the whole travel, the warning tells of the stretch: a long one raises
 * the running current, which is a median, as well.
 */
export function risingDraw(context: FindingContext, load: LoadShift): FindingAnswer {
  const { risings } = context.state.load;
  const isSaid = openOf(context.state, 'rising-draw').length > 0;
  const stillUp = Math.max(STILL_UP, load.deviation);
  noteComing(risings, isUp(context, stillUp, 1));
  const answer = judged(context, load);
  if (!isSaid && answer.present.length > 0) {
    saidAnew(
      risings,
      TOLD_BY.map((back) => isUp(context, stillUp, back)),
    );
  }
  return answer;
}

/**
 * Whether a side drew more by `stillUp`, natural logarithm, on the stroke that lies `back` strokes back; 1 is the
 * latest.
 */
function isUp({ state }: FindingContext, stillUp: number, back: number): boolean {
  return state.room.sides.some((side) => (state.load.sides[side].rises.at(-back) ?? 0) > stillUp);
}

function judged(context: FindingContext, load: LoadShift): FindingAnswer {
  // A part of a movement has no course of its own: where on the travel it is high cannot be told.
  const found = isPart(context) ? [] : takeStretches(context);
  const stretches = found.filter(({ lasts }) => lasts);
  const [open] = openOf(context.state, 'rising-draw');
  const isOfStretch = open?.evidence.from !== undefined;
  const { risings } = context.state.load;
  if (open !== undefined && !isOfStretch && isBack(context, open, load)) {
    if (!isOverAfter(risings, CLEAR_STROKES, 0)) return { present: [open], gone: [] };
    restLoad(context.state.load);
    return { present: [], gone: [open] };
  }
  if (load.taker !== null && open?.side === load.taker && hasPlainlyMoved(load.apart))
    return { present: [], gone: [open] };
  const unexplained = load.risen.filter(
    (side) =>
      riseOf(context, load, side) >
      Math.max(leastSaid(context, load, side, open), explainedRise(context, side)),
  );
  const raised = unexplained.length > 0 && !load.moved;
  const rise = Math.max(0, ...[...load.rises.values()].map(Math.expm1));
  if (isFarAbove(stretches, rise)) return { present: [ofStretches(context, stretches)], gone: [] };
  // The next strokes tell whether it lasts.
  if (open === undefined && isFarAbove(found, rise)) return NOTHING;
  if (isOfStretch && STAYS * rise < saidPercent(open) / 100 && !isOverFor(context, open))
    return { present: [open], gone: [] };
  // A warning of one direction stands unchanged on the strokes of the other.
  if (open !== undefined && open.direction !== null && !raised) return { present: [open], gone: [] };
  if (raised || (open !== undefined && !isOfStretch))
    return { present: [finding(context, load, isOfStretch ? undefined : open)], gone: [] };
  if (open !== undefined && isOfStretch && isOverFor(context, open)) return { present: [], gone: [open] };
  return stretches.length === 0 ? NOTHING : { present: [ofStretches(context, stretches)], gone: [] };
}

/**
 * By what part a side draws more that no warning tells yet. Where a warning says that it took load from the other, that
 * is at most the mean rise of all sides, because the rest is that load.
 */
function riseOf({ state }: FindingContext, { rises }: LoadShift, side: string): number {
  const own = Math.expm1(rises.get(side) ?? 0);
  const hasTaken = openOf(state, 'uneven-sides').some((open) => open.side === side);
  const all = [...rises.values()].map(Math.expm1);
  return hasTaken && all.length > 0 ? Math.min(own, mean(all)) : own;
}

/** The least rise that opens a warning, as a part of the running current; 0 where one is open already. */
function leastSaid(
  { state }: FindingContext,
  { lasting }: LoadShift,
  side: string,
  open: Warning | undefined,
): number {
  if (open !== undefined) return 0;
  const own = state.load.sides[side];
  const { run } = lasting.includes(side) ? own.lasting : own;
  return run < SMALL.strokes ? SMALL.rise : LEAST_SAID;
}

/**
 * A warning of a stretch stands while the stretch is this many times as high as the rise over the whole travel. A
 * guess, no source.
 */
const STAYS = 2;

/**
 * Whether the rise that a warning tells of is over. One of a single direction is over when that is back: the other
 * never left its normal.
 */
function isBack({ state }: FindingContext, open: Warning, load: LoadShift): boolean {
  const sides = open.side === null ? state.room.sides : [open.side];
  const strokes = open.direction === null ? CLEAR_STROKES : CLEAR_ONE_WAY;
  return sides.every((side) => {
    const { rises, raw, ways } = state.load.sides[side];
    const tells = (_: number, i: number) => open.direction === null || ways[i] === open.direction;
    const latest = rises.filter(tells).slice(-strokes);
    if (latest.length < strokes) return false;
    const said = Math.log1p(saidPercent(open) / 100);
    const isAsHigh = median(raw.filter(tells).slice(-strokes)) > AS_HIGH_PART * said;
    return !isAsHigh && median(latest) < Math.max(0.03, load.deviation);
  });
}

function finding(context: FindingContext, load: LoadShift, open: Warning | undefined): Finding {
  const { room } = context.state;
  const worst = [...load.rises].reduce((a, b) => (b[1] > a[1] ? b : a));
  // A warning of both sides stays one of both, and one of one side stays with that, until it is plainly otherwise.
  const part = open === undefined ? SAME_PART : open.side === null ? SAME_PART_STILL : SAME_PART_NOW;
  const all = [...load.rises.values()].every((rise) => rise >= part * worst[1]);
  const side = room.sides.length > 1 && all && load.rises.size > 1 ? null : worst[0];
  const direction = load.oneWay.includes(worst[0]) ? context.direction : null;
  const rise = Math.expm1(worst[1]);
  // On the way back to normal the warning stays as it is, until it is cleared.
  if (open !== undefined && rise < Math.max(GOING_BACK, (BACK_PART * saidPercent(open)) / 100)) return open;
  const percent = Math.round(100 * rise);
  const measured = context.residual(worst[0], 'runningAmps');
  // A stroke that ran as ever does not change what the warning says either.
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
