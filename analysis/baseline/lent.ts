import { rootMeanSquare } from 'simple-statistics';
import { MEASURE_INDEX, MEASURE_NAMES, type MeasureName } from '../measures.ts';
import { median } from '../statistics/median.ts';
import { medianAbsoluteDeviation } from '../statistics/medianAbsoluteDeviation.ts';
import { betweenVariance, type InterceptGroup, poolGroups } from '../statistics/randomIntercepts.ts';
import { PER_DEGREE_VARIANCE, PER_VOLT_VARIANCE } from './conditions.ts';
import type { LentMeasure, LentNormal } from './lending.ts';
import { PRIORS, ROOM_SPREADS } from './priors.ts';

/**
 * What other rooms of the coach model say of one measure of a room whose own strokes are still to come, on the
 * measure's scale: level at 12.6 V and 20 °C and the two slopes, with their covariance, row after row.
 */
export interface LentPrior {
  readonly means: readonly number[];
  readonly covariance: readonly number[];
  /** Stroke-to-stroke standard deviation, and how many strokes it is worth. */
  readonly scale: number;
  readonly scaleWeight: number;
}

/** What one side in one direction borrows. */
export interface Lent {
  /** How many rooms lend. */
  readonly rooms: number;
  /** Own strokes after which the normal is usable. */
  readonly needed: number;
  /** By index of MEASURES; null: nobody lends that. */
  readonly measures: readonly (LentPrior | null)[];
}

/** Own strokes needed by the number of rooms that lend: with three and more the second stroke is judged. */
const NEEDED = [Number.POSITIVE_INFINITY, 4, 2, 1] as const;
/** The guess of how far rooms of a model differ counts for this many rooms. */
const GUESS_ROOMS = 3;
/** Rooms whose running currents spread by more than this (natural logarithm) are of one model in name only. */
const MOST_SPREAD = 0.2;
/**
 * A room this many spreads from the middle of the others does not lend: it may well have been faulty when it learnt.
 */
const OUTLYING_SPREADS = 3;
/** How far the slopes of rooms of one model differ, as a part of how far those of any rooms do. */
const SLOPES_DIFFER = 0.5;
/** The noise of the lending rooms counts for as many strokes as a shape kept from before a service. */
const SCALE_WEIGHT = 12;

/**
 * What a room that is still learning may borrow from rooms of the same coach model. `normals`: what each learnt from
 * its own strokes alone. Null where no room lends, or where those that would are not alike.
 *
 * The rooms' levels are taken to scatter normally about the model's: the variance between them is that of Paule and
 * Mandel, mixed with a guess while they are few (as a scaled inverse chi-squared prior would, A. Gelman et al.,
 * Bayesian Data Analysis, section 2.6); a new room is one more of them, so that its prior has that variance and the
 * pool's own uncertainty (empirical Bayes; B. Efron, C. Morris, 1975).
 */
export function borrow(normals: readonly LentNormal[]): Lent | null {
  const running = poolMeasure(normals, 'runningAmps');
  if (running === null || running.spread > MOST_SPREAD) return null;
  const { rooms } = running;
  return {
    rooms,
    needed: NEEDED[Math.min(rooms, NEEDED.length - 1)],
    measures: MEASURE_NAMES.map((name) => poolMeasure(normals, name)?.prior ?? null),
  };
}

/** Degrees of freedom of the spread between so many rooms, the guess's included. */
export function poolDegrees(rooms: number): number {
  return GUESS_ROOMS + rooms - 1;
}

function poolMeasure(
  normals: readonly LentNormal[],
  name: MeasureName,
): { prior: LentPrior; rooms: number; spread: number } | null {
  const index = MEASURE_INDEX[name];
  const all = normals.map(({ measures }) => measures[index]).filter((one) => one !== null);
  const lent = withoutOutlying(all, name);
  const { perVolt, perDegree } = PRIORS[name];
  const slopes = {
    means: [perVolt.mean, perDegree.mean],
    standardDeviations: [perVolt.spread, perDegree.spread],
  };
  const groups = lent.map(groupOf);
  const between = mixedVariance(groups, betweenVariance(groups, slopes), ROOM_SPREADS[name] ** 2);
  const pooled = poolGroups(groups, slopes, between);
  if (pooled === null) return null;
  const covariance = [...pooled.covariance];
  covariance[0] += between;
  covariance[PER_VOLT_VARIANCE] += (SLOPES_DIFFER * perVolt.spread) ** 2;
  covariance[PER_DEGREE_VARIANCE] += (SLOPES_DIFFER * perDegree.spread) ** 2;
  const scale = rootMeanSquare(lent.map((one) => one.scale));
  const prior = { means: pooled.coefficients, covariance, scale, scaleWeight: SCALE_WEIGHT };
  return { prior, rooms: lent.length, spread: Math.sqrt(between) };
}

function groupOf(lent: LentMeasure): InterceptGroup {
  const { value, conditions, variance, slopeInformation, slopeScores } = lent;
  return { response: value, regressors: conditions, variance, slopeInformation, slopeScores };
}

/**
 * Leaves out what lies far from the others (F. R. Hampel's identifier). Of two nobody can say which is off: both stay.
 */
function withoutOutlying(lent: readonly LentMeasure[], name: MeasureName): readonly LentMeasure[] {
  if (lent.length < 3) return lent;
  const { perVolt, perDegree } = PRIORS[name];
  const levels = lent.map(
    ({ value, conditions: [volts, degrees] }) => value - volts * perVolt.mean - degrees * perDegree.mean,
  );
  const middle = median(levels);
  const spread = Math.max(ROOM_SPREADS[name], medianAbsoluteDeviation(levels));
  return lent.filter(
    ({ variance }, i) => Math.abs(levels[i] - middle) <= OUTLYING_SPREADS * Math.sqrt(spread ** 2 + variance),
  );
}

/**
 * The variance between rooms, mixed of estimate and guess. The estimate counts for as many rooms, less one, as tell
 * their level better than the guess.
 */
function mixedVariance(groups: readonly InterceptGroup[], estimate: number, guess: number): number {
  const telling = groups.reduce((sum, { variance }) => sum + guess / (guess + variance), 0);
  const weight = Math.max(0, telling - 1);
  return (GUESS_ROOMS * guess + weight * estimate) / (GUESS_ROOMS + weight);
}
