import type { DoneAnalysis } from '../measures.ts';
import { channelOf } from '../room/state.ts';
import { median } from '../statistics/median.ts';
import { DIRECTIONS, type Direction } from '../trace.ts';
import type { FindingContext } from './finding.ts';

/** How much longer than expected the latest strokes of a direction seemed to take, natural logarithm, and whether their
 * course along the travel was the whole of the usual one. */
export interface ClockMemory extends Record<Direction, { longer: number; whole: boolean }[]> {}

export function beginClockMemory(): ClockMemory {
  return { extend: [], retract: [] };
}

const LATEST = 2;
const FEWEST = 3;
/** A rate that is wrong by less shows in nothing; all strokes are off by the same. */
const LEAST = 0.17;
const ALIKE = 0.06;
/** What no battery does to a stroke's time, where neither the supply nor a stall tells how strong it was. */
const LEAST_UNSEEN = 0.3;
/** A current further from its normal than this tells of something else. */
const SAME_CURRENT = 0.1;
/** The whole course fits so much better than any part of it. */
const BETTER = 0.7;

/**
 * By how much the logger's rate seems to be off: the factor, natural logarithm, by which all strokes of both directions
 * seem to take longer (negative: shorter) at an unchanged current; null: it is not. A weak supply slows the room and
 * lowers the stall; strokes that really end early show a part of the usual course only.
 */
export function rateChange(context: FindingContext): number | null {
  const { state, analysis, direction } = context;
  const read = readStroke(context, analysis);
  if (read === null) return null;
  const own = state.clock[direction];
  own.push(read);
  if (own.length > LATEST) own.shift();
  const recorded = DIRECTIONS.filter((way) => state.usable[way] > 0);
  const latest = recorded.flatMap((way) => state.clock[way]);
  if (latest.length < Math.min(FEWEST, LATEST * recorded.length)) return null;
  if (recorded.some((way) => state.clock[way].length === 0)) return null;
  const longer = median(latest.map((stroke) => stroke.longer));
  if (Math.abs(longer) < LEAST || latest.some((stroke) => Math.abs(stroke.longer - longer) > ALIKE))
    return null;
  return longer > 0 || latest.every(({ whole }) => whole) ? longer : null;
}

function readStroke(
  context: FindingContext,
  analysis: DoneAnalysis,
): { longer: number; whole: boolean } | null {
  const sides = context.state.room.sides.filter((side) => analysis.sides[side] !== undefined);
  const longers: number[] = [];
  for (const side of sides) {
    const duration = context.residual(side, 'durationS');
    const running = context.residual(side, 'runningAmps');
    if (duration === null || running === null) return null;
    const longer = duration.residual;
    // A supply that nobody recorded stretches the time as it lowers the stall.
    const stall = context.analysis.supplyVolts === null ? context.residual(side, 'endStopAmps') : null;
    const bySupply = stall === null ? 0 : -stall.residual;
    const unseen = context.analysis.supplyVolts === null && stall === null;
    const isOther =
      Math.abs(running.residual) > SAME_CURRENT ||
      Math.abs(bySupply) > Math.abs(longer) / 2 ||
      (unseen && Math.abs(longer) < LEAST_UNSEEN);
    longers.push(isOther ? 0 : longer);
  }
  if (longers.length === 0) return null;
  const longer = median(longers);
  return { longer, whole: longer >= 0 || sides.every((side) => isWhole(context, side, Math.exp(longer))) };
}

/** Whether a stroke's profile is the whole usual course rather than its first or last part. */
function isWhole({ state, analysis, direction }: FindingContext, side: string, part: number): boolean {
  const usual = channelOf(state, side, direction)?.profile ?? [];
  const { profile } = analysis.sides[side];
  const whole = misfit(profile, usual, 0, 1);
  const first = misfit(profile, usual, 0, part);
  const last = misfit(profile, usual, 1 - part, part);
  return whole < BETTER * Math.min(first, last);
}

/** Mean square of a profile's difference from the stretch of the usual one that begins at `from`, their levels aside. */
function misfit(
  profile: readonly (number | null)[],
  usual: readonly (number | null)[],
  from: number,
  length: number,
): number {
  const ratios: number[] = [];
  profile.forEach((amps, bin) => {
    const place = (from + ((bin + 0.5) / profile.length) * length) * profile.length;
    const normal = usual[Math.min(profile.length - 1, Math.floor(place))] ?? null;
    if (amps !== null && normal !== null && amps > 0 && normal > 0) ratios.push(Math.log(amps / normal));
  });
  if (ratios.length < profile.length / 2) return Number.POSITIVE_INFINITY;
  const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  return ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0) / ratios.length;
}
