import type { Residual } from '../../baseline/judge.ts';
import { lessExplained, unexplainedLag } from '../../baseline/lagByLoad.ts';
import { MEASURE_INDEX } from '../../measures.ts';
import { lagAtStops, SWITCHED_OFF_TOGETHER_S } from '../../stroke/lag.ts';
import { H_SIGMAS, K_SIGMAS, SHARED_SIGMAS } from '../charts/chartDesign.ts';
import {
  isBackEachWay,
  isOneWay,
  latestShift,
  type ShiftDesign,
  takeShift,
  tellsFor,
} from '../charts/shiftChart.ts';
import {
  type Finding,
  type FindingAnswer,
  type FindingContext,
  isOpen,
  NOTHING,
  openOf,
} from '../finding.ts';
import { mayBeThePlace } from '../stay.ts';
import { beginLagMemory } from './lagMemory.ts';
import { slowedByPeaks } from './slowedByPeaks.ts';

/** A lag that moved by less than this, in seconds and as a part of the stroke, means nothing. */
const LEAST_S = 0.3;
const LEAST_PART = 0.01;
/**
 * Where the sides keep much closer together than that part, this many standard deviations of the lag are enough
 * instead.
 */
const SURELY_MOVED_SIGMAS = 3;
/**
 * A larger lag than this part of the stroke is more than the ground does, so that one stay is enough to tell.
 */
const PLACE_PART = 0.06;
/** Above this part of the stroke the severity is `service`: a guess, no source. */
const SERVICE_PART = 0.08;
/**
 * The lag is back to normal within its standard deviation, or this part of the least that opens a warning. A guess, no
 * source.
 */
const BACK_PART = 0.7;

type LagJudged = Pick<Residual, 'rise' | 'noise' | 'uncertainty' | 'unrecorded' | 'deviation'>;

/** From this many strokes that ended together on, that is how the room goes, even while it learns anew after work. */
const KNOWN_TOGETHER = 6;

/** This many of them tell how far apart the sides end. Later ones do not count, so that no fault is learnt. */
const APART_STROKES = 16;

/**
 * Takes a stroke whose sides ended together into the mean of how far apart they end, unless a `late-side` warning is
 * open.
 */
function noteTogether({ state, analysis }: FindingContext): void {
  const { lag } = state;
  lag.together = Math.min(lag.together + 1, KNOWN_TOGETHER);
  const strokes = lag.apart.strokes + 1;
  if (strokes > APART_STROKES || analysis.lagS === null || isOpen(state, 'late-side')) return;
  lag.apart = { meanS: lag.apart.meanS + (analysis.lagS - lag.apart.meanS) / strokes, strokes };
}

/**
 * Whether the sides usually come to their ends further apart than what counts as together. If they end together all the
 * same, either they were switched off on the way or the lag has changed: until enough such strokes were seen, that
 * cannot be told.
 */
function isUsuallyApart({ state, direction }: FindingContext): boolean {
  return state.channels.some((channel) => {
    const usual = channel.direction === direction ? channel.fits[MEASURE_INDEX.lagS] : null;
    return usual !== null && Math.abs(usual.coefficients[0]) > SWITCHED_OFF_TOGETHER_S;
  });
}

/**
 * The lag of a room whose sides were always switched off together, before any stop. It has no lag to learn, but its
 * usual lag is known to within what counts as together. Null where such strokes were not seen often enough, and where a
 * side came to a stop on this stroke.
 */
function fromTogether(context: FindingContext): LagJudged | null {
  const { state, analysis, doubtful, residual } = context;
  const { sides } = state.room;
  const hasLearnt = sides.every((side) => residual(side, 'durationS') !== null);
  const asEver = hasLearnt || (state.lag.together >= KNOWN_TOGETHER && doubtful.size === 0);
  const stopped = sides.some((side) => analysis.sides[side]?.endStopAmps !== null);
  const isKnown = state.lag.apart.strokes >= KNOWN_TOGETHER;
  const usualS = isKnown ? state.lag.apart.meanS : 0;
  const lagS = endedTogether(context) ? (analysis.lagS ?? usualS) : lagAtStops(analysis);
  if (lagS === null || !asEver || stopped) return null;
  if (!isKnown && isUsuallyApart(context)) return null;
  const noise = SWITCHED_OFF_TOGETHER_S / 2;
  return { rise: lagS - usualS, noise, uncertainty: 0, unrecorded: 0, deviation: noise };
}

function endedTogether({ state, analysis, doubtful }: FindingContext): boolean {
  const ended = state.room.sides.every((side) => analysis.sides[side]?.endStopAmps === null);
  return ended && lagAtStops(analysis) === null && doubtful.size === 0;
}

/**
 * A side that takes this much less time and draws this much more, natural logarithms, has itself changed. Guesses, no
 * source.
 */
const AHEAD = { time: -0.08, drawn: 0.06 };

/**
 * Whether a side turns faster and draws more, as a motor with weak magnets does: then it is not the other side that is
 * late.
 */
function ranAhead({ residual }: FindingContext, side: string): boolean {
  const [time, drawn] = [residual(side, 'durationS'), residual(side, 'runningAmps')];
  return time !== null && drawn !== null && time.rise < AHEAD.time && drawn.rise > AHEAD.drawn;
}

/** The design of the charts of the lag for this stroke, seconds. */
interface LagDesign extends ShiftDesign {
  readonly durationS: number;
  /** A smaller move of the lag than this means nothing. */
  readonly leastS: number;
}

/**
 * `byLag`: whether the lag has a normal of its own. Without one no stop was read off the currents, so none can have
 * been read a little early or late, and the least in seconds is enough.
 */
function designOf({ state, analysis }: FindingContext, judged: LagJudged, byLag: boolean): LagDesign {
  const durationS = Math.max(...state.room.sides.map((side) => analysis.sides[side].durationS));
  const ofStroke = Math.min(LEAST_PART * durationS, SURELY_MOVED_SIGMAS * judged.deviation);
  const leastS = byLag ? Math.max(LEAST_S, ofStroke) : LEAST_S;
  const shared = SHARED_SIGMAS * Math.hypot(judged.uncertainty, judged.unrecorded);
  const k = Math.max(K_SIGMAS * judged.noise, leastS) + shared;
  const h = Math.max(H_SIGMAS * judged.noise, leastS);
  return { durationS, leastS, all: { k, h }, ofWay: { k: k + leastS, h } };
}

/** One side reaches its end late, beyond the room's own normal. Rooms with two sides only. */
export function lateSide(context: FindingContext): FindingAnswer {
  const { state, direction } = context;
  const { sides } = state.room;
  if (sides.length !== 2) return NOTHING;
  const byLag = context.residual(sides[0], 'lagS');
  if (endedTogether(context)) noteTogether(context);
  const judged = byLag ?? fromTogether(context);
  if (judged === null) return NOTHING;
  const memory = state.lag;
  const design = designOf(context, judged, byLag !== null);
  const { durationS, leastS } = design;
  const [first, last] = sides.map((side) => context.residual(side, 'runningAmps')?.rise ?? 0);
  const [firstS, lastS] = sides.map((side) => slowedByPeaks(context.analysis.sides[side]));
  const move = unexplainedLag(lessExplained(judged.rise, lastS - firstS), last - first, durationS);
  takeShift(memory, direction, move, design);
  const [open] = openOf(state, 'late-side');
  const within = Math.max(judged.deviation, BACK_PART * leastS);
  if (open !== undefined && isBackEachWay(memory, open.side === sides[1] ? 1 : -1, within)) {
    Object.assign(memory, beginLagMemory(), { apart: memory.apart });
    return { present: [], gone: [open] };
  }
  const own = memory.ways[direction];
  const oneWay = isOneWay(memory, direction);
  const shift = latestShift(oneWay ? own : memory.all);
  const runs = [tellsFor(memory.all, move, design.all), oneWay ? tellsFor(own, move, design.ofWay) : 0];
  const isPlace = (run: number) => mayBeThePlace(state.stay, run) && Math.abs(shift) < PLACE_PART * durationS;
  const raised = runs.some((run) => run > 0 && !isPlace(run));
  const isLittle = Math.abs(shift) < leastS;
  if (open === undefined && (!raised || isLittle)) return NOTHING;
  const [side, other] = shift > 0 ? [sides[1], sides[0]] : [sides[0], sides[1]];
  if (open === undefined && ranAhead(context, other)) return NOTHING;
  // On the way back to normal the warning stays as it is; and the other side is not called late before that is sure.
  const isOther = open !== undefined && open.side !== side && !raised;
  const isQuietWay = Math.abs(latestShift(own)) < leastS;
  if (open !== undefined && (isOther || isQuietWay || isLittle)) return { present: [open], gone: [] };
  return { present: [finding(context, side, shift, { durationS, deviation: judged.deviation })], gone: [] };
}

/** `shift`: seconds; `durationS`: of the stroke; `deviation`: of its lag, seconds. */
function finding(
  { analysis }: FindingContext,
  side: string,
  shift: number,
  { durationS, deviation }: { readonly durationS: number; readonly deviation: number },
): Finding {
  const seconds = Math.round(10 * Math.abs(shift)) / 10;
  return {
    kind: 'late-side',
    side,
    severity: Math.abs(shift) > SERVICE_PART * durationS ? 'service' : 'watch',
    headline: `The ${side} side reaches its end ${seconds} s later than is normal for this room.`,
    evidence: {
      laterS: seconds,
      lagS: analysis.lagS,
      sigmas: Math.round((10 * Math.abs(shift)) / deviation) / 10,
    },
  };
}
