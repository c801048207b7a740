import type { Residual } from '../baseline/judge.ts';
import { unexplainedLag } from '../baseline/lagByLoad.ts';
import { median } from '../statistics/median.ts';
import { SWITCHED_OFF_TOGETHER_S } from '../stroke/lag.ts';
import { DIRECTIONS, otherWay } from '../trace.ts';
import { H_SIGMAS, K_SIGMAS, LEAST_RUN, SHARED_SIGMAS } from './chartDesign.ts';
import { type FindingAnswer, type FindingContext, NOTHING, openOf } from './finding.ts';
import { beginLagMemory, type LagChart, type LagMemory } from './lagMemory.ts';
import { keepLatest, step } from './loadMemory.ts';
import { mayBeThePlace } from './stay.ts';

/** A lag that moved by less than this, in seconds and as a part of the stroke, means nothing. */
const LEAST_S = 0.3;
const LEAST_PART = 0.02;
/** More than the ground does, as a part of the stroke: then one stay is enough to tell. */
const PLACE_PART = 0.06;
/** It is over once so many strokes of each direction are back. */
const CLEAR_EACH_WAY = 2;
/** The way back is as ever where its lag moved by less than this part of the way's own. A guess, no source. */
const BACK_PART = 0.3;
const SERVICE_PART = 0.08;

type LagJudged = Pick<Residual, 'rise' | 'noise' | 'uncertainty' | 'unrecorded' | 'deviation'>;

/** So many strokes that ended together are how the room goes, also while it learns anew after work. */
const KNOWN_TOGETHER = 6;

/**
 * A room whose sides were always switched off together, before any stop, has no lag to learn; but what it was is known
 * to within what measuring calls together. Null where that was not seen yet, and where one came to a stop now.
 */
function fromTogether({ state, analysis, doubtful, residual }: FindingContext): LagJudged | null {
  const { sides } = state.room;
  const hasLearnt = sides.every((side) => residual(side, 'durationS') !== null);
  const asEver = hasLearnt || (state.lag.together >= KNOWN_TOGETHER && doubtful.size === 0);
  const stopped = sides.some((side) => analysis.sides[side]?.endStopAmps !== null);
  if (analysis.lagS === null || !asEver || stopped) return null;
  const noise = SWITCHED_OFF_TOGETHER_S / 2;
  return { rise: analysis.lagS, noise, uncertainty: 0, unrecorded: 0, deviation: noise };
}

function endedTogether({ state, analysis, doubtful }: FindingContext): boolean {
  const ended = state.room.sides.every((side) => analysis.sides[side]?.endStopAmps === null);
  return ended && analysis.lagS === null && doubtful.size === 0;
}

/** A side that takes so much less time and draws so much more, natural logarithm, is itself another than it was. Guesses, no source. */
const AHEAD = { time: -0.08, drawn: 0.06 };

/** Whether a side turns faster and draws more for it, as a motor does whose magnets are weak: then the other is not late by itself. */
function ranAhead({ residual }: FindingContext, side: string): boolean {
  const [time, drawn] = [residual(side, 'durationS'), residual(side, 'runningAmps')];
  return time !== null && drawn !== null && time.rise < AHEAD.time && drawn.rise > AHEAD.drawn;
}

/** One more stroke into a chart. */
function takeLag(chart: LagChart, move: number, { k, h }: { readonly k: number; readonly h: number }): void {
  [chart.up, chart.upRun] = step(chart.up, chart.upRun, Math.min(move, k + h / 2), k, h);
  [chart.down, chart.downRun] = step(chart.down, chart.downRun, Math.min(-move, k + h / 2), k, h);
  keepLatest(chart.shifts, move);
}

function latestShift({ shifts }: LagChart): number {
  return shifts.length === 0 ? 0 : median(shifts.slice(-LEAST_RUN));
}

/** Whether the latest strokes of each direction are back within so many seconds of their normal. */
function isBack({ all, ways }: LagMemory, isLast: boolean, withinS: number): boolean {
  const later = DIRECTIONS.map((way) => {
    const latest = ways[way].shifts.slice(-CLEAR_EACH_WAY);
    return latest.length === 0 ? 0 : median(latest) * (isLast ? 1 : -1);
  });
  return all.shifts.length >= DIRECTIONS.length * CLEAR_EACH_WAY && Math.max(...later) < withinS;
}

/** One side reaches its end late, beyond the room's own normal. Rooms with two sides only. */
export function lateSide(context: FindingContext): FindingAnswer {
  const { state, analysis, direction } = context;
  const { sides } = state.room;
  if (sides.length !== 2) return NOTHING;
  const byLag = context.residual(sides[0], 'lagS');
  if (endedTogether(context)) state.lag.together = Math.min(state.lag.together + 1, KNOWN_TOGETHER);
  const judged = byLag ?? fromTogether(context);
  if (judged === null) return NOTHING;
  const memory = state.lag;
  const durationS = Math.max(...sides.map((side) => analysis.sides[side].durationS));
  // Where no stop is read off the currents, neither can it be read a little too early or too late.
  const least = byLag === null ? LEAST_S : Math.max(LEAST_S, LEAST_PART * durationS);
  const shared = SHARED_SIGMAS * Math.hypot(judged.uncertainty, judged.unrecorded);
  const k = Math.max(K_SIGMAS * judged.noise, least) + shared;
  const h = Math.max(H_SIGMAS * judged.noise, least);
  const [first, last] = sides.map((side) => context.residual(side, 'runningAmps')?.rise ?? 0);
  const move = unexplainedLag(judged.rise, last - first, durationS);
  const own = memory.ways[direction];
  takeLag(memory.all, move, { k, h });
  takeLag(own, move, { k: k + least, h });
  const [open] = openOf(state, 'late-side');
  if (open !== undefined && isBack(memory, open.side === sides[1], Math.max(judged.deviation, 0.7 * least))) {
    Object.assign(memory, beginLagMemory());
    return { present: [], gone: [open] };
  }
  const ownShift = latestShift(own);
  const isOneWay = Math.abs(latestShift(memory.ways[otherWay(direction)])) < BACK_PART * Math.abs(ownShift);
  const shift = isOneWay ? ownShift : latestShift(memory.all);
  const tells = ({ up, upRun, down, downRun }: LagChart, least: number) => {
    const [sum, run] = move > 0 ? [up, upRun] : [down, downRun];
    const isPlace = mayBeThePlace(state.stay, run) && Math.abs(shift) < PLACE_PART * durationS;
    return sum > h && Math.abs(move) > least && run >= LEAST_RUN && !isPlace;
  };
  const raised = tells(memory.all, k) || (isOneWay && tells(own, k + least));
  if (open === undefined && (!raised || Math.abs(shift) < least)) return NOTHING;
  const [side, other] = shift > 0 ? [sides[1], sides[0]] : [sides[0], sides[1]];
  if (open === undefined && ranAhead(context, other)) return NOTHING;
  // On its way back it goes on as it was said; nor is the other side late before that is sure.
  const isOther = open !== undefined && open.side !== side && !raised;
  const isQuietWay = Math.abs(ownShift) < least;
  if (open !== undefined && (isOther || isQuietWay || Math.abs(shift) < least))
    return { present: [open], gone: [] };
  const seconds = Math.round(10 * Math.abs(shift)) / 10;
  return {
    present: [
      {
        kind: 'late-side',
        side,
        direction: null,
        position: null,
        pattern: null,
        severity: Math.abs(shift) > SERVICE_PART * durationS ? 'service' : 'watch',
        headline: `The ${side} side reaches its end ${seconds} s later than is normal for this room.`,
        evidence: {
          laterS: seconds,
          lagS: analysis.lagS,
          sigmas: Math.round((10 * Math.abs(shift)) / judged.deviation) / 10,
        },
      },
    ],
    gone: [],
  };
}
