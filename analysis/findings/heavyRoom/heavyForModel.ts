import { BY_AMBIENT, regressors } from '../../baseline/conditions.ts';
import { poolDegrees } from '../../baseline/lent.ts';
import { PRIORS, UNRECORDED } from '../../baseline/priors.ts';
import { toScale } from '../../baseline/scale.ts';
import { MEASURE_INDEX, type MeasureName, measureValue } from '../../measures.ts';
import { channelOf, type RoomState } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { quadraticForm } from '../../statistics/shrunkRegression.ts';
import { studentTUpperQuantile } from '../../statistics/studentT.ts';
import type { FindingContext } from '../finding.ts';
import { isFromFirstOn } from './heavyLoad.ts';
import type { Above, AboveModel } from './heavyMemory.ts';

/** A quarter more than its model is the least that is far above it, however alike the model's rooms are. */
const LEAST_ABOVE = Math.log(1.25);
/** One healthy side in 200 is so far above those of its model, once in its life; few of them by the least as well. */
const PROBABILITY = 0.005;
const LATEST = 5;

/** One room may itself be at fault, a side of it idle; two that are far from alike lend nothing, and less alike ones widen the limit (`borrow`). */
const FEWEST_ROOMS = 2;

/** Null where too few other rooms lend what it needs. */
export function aboveModel(context: FindingContext, side: string): AboveModel | null {
  const lent = channelOf(context.state, side, context.direction)?.lent ?? null;
  const running = measureAbove(context, side, 'runningAmps');
  const prior = lent?.measures[MEASURE_INDEX.runningAmps] ?? null;
  if (lent === null || lent.rooms < FEWEST_ROOMS || prior === null || running === null) return null;
  const share = context.state.room.sides.length > 1 ? measureAbove(context, side, 'share') : null;
  return { running, share, degrees: poolDegrees(lent.rooms), modelAmps: Math.exp(prior.means[0]) };
}

function measureAbove(
  { state, analysis, direction, conditions }: FindingContext,
  side: string,
  measure: MeasureName,
): Above | null {
  const value = measureValue(analysis, measure, side);
  const prior = channelOf(state, side, direction)?.lent?.measures[MEASURE_INDEX[measure]] ?? null;
  if (value === null || prior === null) return null;
  const row = regressors(conditions, BY_AMBIENT);
  const expected = row.reduce((sum, x, a) => sum + x * prior.means[a], 0);
  const { perVolt, perDegree } = PRIORS[measure];
  const unrecorded = [perVolt, perDegree].map((slope, i) =>
    conditions[i] === null ? UNRECORDED[i] * Math.hypot(slope.mean, slope.spread) : 0,
  );
  return {
    above: toScale(measure, value) - expected,
    spread: Math.hypot(Math.sqrt(quadraticForm(prior.covariance, row)), ...unrecorded),
    noise: prior.scale,
  };
}

/**
 * How far a side lies above the limit that its model sets, 0 at it, natural logarithm; the limit is a prediction limit
 * for one more room (Student's t). The spread between rooms is shared by all strokes: more of them make it no smaller.
 * A side whose share of the load is above such a limit too needs no more than the least: cold raises no share.
 */
export function overModelLimit(strokes: readonly AboveModel[]): number {
  const latest = strokes.slice(-LATEST);
  const t = studentTUpperQuantile(PROBABILITY, Math.min(...latest.map(({ degrees }) => degrees)));
  const running = standing(
    latest.map((stroke) => stroke.running),
    t,
  );
  const shares = latest.map(({ share }) => share).filter((share) => share !== null);
  const share = shares.length < latest.length ? null : standing(shares, t);
  const isLopsided = share !== null && share.above > share.limit;
  return running.above - Math.max(LEAST_ABOVE, isLopsided ? 0 : running.limit);
}

/** Against its model a room is told a little later than by itself: the first stay alone may be crooked. */
const FEWEST_STROKES = 4;

/** How far a side's latest strokes lie above the limit that its model sets, natural logarithm; null: too few were made. */
export function overModel({ heavy }: RoomState, side: string): number | null {
  const { above } = heavy[side];
  return above.length < FEWEST_STROKES ? null : overModelLimit(above);
}

/** Whether a side drew far more than those of its model do from the first on, whatever is said of it. */
export function standsAboveModel(state: RoomState, side: string): boolean {
  return (overModel(state, side) ?? 0) > 0 && isFromFirstOn(state.heavy[side]);
}

function standing(strokes: readonly Above[], t: number): { above: number; limit: number } {
  const spread = Math.max(...strokes.map((stroke) => stroke.spread));
  const noise = Math.max(...strokes.map((stroke) => stroke.noise)) / Math.sqrt(strokes.length);
  return { above: median(strokes.map(({ above }) => above)), limit: t * Math.hypot(spread, noise) };
}
