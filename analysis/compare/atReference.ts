import { conditionsAt } from '../baseline/conditions.ts';
import { PRIORS } from '../baseline/priors.ts';
import { toScale } from '../baseline/scale.ts';
import { type MeasureName, measureValue } from '../measures.ts';
import { median } from '../statistics/median.ts';
import { quadraticForm, shrunkRegression } from '../statistics/shrunkRegression.ts';
import type { ComparedStroke } from './compared.ts';

/** Strokes before and after as they would have been at 12.6 V of a 12 V system and 20 °C, by how the measure follows either. */
export interface AtReference {
  /** On the measure's scale; a stroke without the measure is left out. */
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** When the strokes of these were made. */
  readonly beforeMs: readonly number[];
  readonly afterMs: readonly number[];
  /** How far one stroke is brought, on the measure's scale: what is taken off what was measured. */
  readonly offsetOf: (stroke: ComparedStroke) => number;
  /** Standard deviation of what the slopes leave open of the difference between the spans' conditions. */
  readonly unsure: number;
}

/**
 * The slopes are the usual ones, overruled by what the strokes of both spans show within each span: a level for either
 * and one slope for both, so that what the work did is not taken for weather. Where the spans differ in weather or
 * supply by more than either of them varies, what the slopes leave open is told with it.
 *
 * Source: analysis of covariance, R. A. Fisher (1932), Statistical Methods for Research Workers, section 49.1; shrunk
 * as D. V. Lindley, A. F. M. Smith (1972), Bayes estimates for the linear model.
 */
export function atReference(
  measure: MeasureName,
  before: readonly ComparedStroke[],
  after: readonly ComparedStroke[],
  { side, nominalVolts }: { readonly side: string; readonly nominalVolts: number },
): AtReference {
  const conditionsOf = (stroke: ComparedStroke) => conditionsBy(stroke, nominalVolts);
  const valueIn = (stroke: ComparedStroke) => {
    const value = measureValue(stroke.analysis, measure, side);
    return value === null
      ? []
      : [{ value: toScale(measure, value), conditions: conditionsOf(stroke), atMs: stroke.event.atMs }];
  };
  const [earlier, later] = [before, after].map((strokes) => strokes.flatMap(valueIn));
  const { slopes, covariance } = slopesWithin(measure, earlier, later);
  const offset = ([volts, degrees]: Conditions) => slopes[0] * volts + slopes[1] * degrees;
  const apart = [0, 1].map((k) => meanOf(later, k) - meanOf(earlier, k));
  return {
    before: earlier.map(({ value, conditions }) => value - offset(conditions)),
    after: later.map(({ value, conditions }) => value - offset(conditions)),
    beforeMs: earlier.map(({ atMs }) => atMs),
    afterMs: later.map(({ atMs }) => atMs),
    offsetOf: (stroke) => offset(conditionsOf(stroke)),
    unsure: Math.sqrt(Math.max(0, quadraticForm(covariance, apart))),
  };
}

/** Volts and degrees from the reference; what was not recorded counts as at it. */
type Conditions = readonly [volts: number, degrees: number];

interface Value {
  readonly value: number;
  readonly conditions: Conditions;
  readonly atMs: number;
}

function conditionsBy({ event, analysis }: ComparedStroke, nominalVolts: number): Conditions {
  const [volts, degrees] = conditionsAt({
    supplyVolts: analysis.supplyVolts,
    nominalVolts,
    ambientC: event.ambientC,
    atMs: event.atMs,
  });
  return [volts ?? 0, degrees ?? 0];
}

function meanOf(values: readonly Value[], k: number): number {
  if (values.length === 0) return 0;
  return values.reduce((sum, { conditions }) => sum + conditions[k], 0) / values.length;
}

/** Slopes per volt and per degree, and their covariance, row after row. */
function slopesWithin(measure: MeasureName, earlier: readonly Value[], later: readonly Value[]) {
  const { perVolt, perDegree, scale, scaleWeight, scaleFloor, levelSpread } = PRIORS[measure];
  const rows = [
    ...earlier.map(({ conditions }) => [1, 0, ...conditions]),
    ...later.map(({ conditions }) => [0, 1, ...conditions]),
  ];
  const levels = [earlier, later].map((values) =>
    values.length === 0 ? 0 : median(values.map(({ value }) => value)),
  );
  const fit = shrunkRegression(
    rows,
    [...earlier, ...later].map(({ value }) => value),
    {
      prior: {
        means: [...levels, perVolt.mean, perDegree.mean],
        standardDeviations: [levelSpread, levelSpread, perVolt.spread, perDegree.spread],
      },
      scaleFloor,
      priorScale: { scale, weight: scaleWeight },
      correctScale: true,
      tolerance: 1e-6,
    },
  );
  if (fit === null) throw new RangeError('A prior of finite width leaves no coefficient open.');
  // Behind the two levels; the covariance of all four stands row after row.
  const slopes = [2, 3];
  return {
    slopes: slopes.map((slope) => fit.coefficients[slope]),
    covariance: slopes.flatMap((row) =>
      slopes.map((column) => fit.covariance[fit.coefficients.length * row + column]),
    ),
  };
}
