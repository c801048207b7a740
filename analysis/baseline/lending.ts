import { MEASURE_NAMES, type MeasureName } from '../measures.ts';
import { median } from '../statistics/median.ts';
import { type ShrunkRegression, shrunkRegression } from '../statistics/shrunkRegression.ts';
import type { Direction } from '../trace.ts';
import { BY_AMBIENT, type Conditions, regressors } from './conditions.ts';
import { type MeasurePrior, PRIORS, UNRECORDED, unseenSupply } from './priors.ts';
import { LEARNING_STROKES } from './strokesNeeded.ts';
import { wholeStrokes } from './wholeStrokes.ts';

/**
 * What a room's first strokes tell of one measure, on the measure's scale. Nothing of it was borrowed, so that lending
 * does not go round in a circle, and a change in one room does not reach a third.
 */
export interface LentMeasure {
  /** Mean supply less 12.6 V and ambient less 20 °C; what was not recorded counts as at the reference. */
  readonly conditions: readonly [number, number];
  readonly value: number;
  /** The variance of `value` as that room's own level under those conditions. */
  readonly variance: number;
  /** X'X and X'y about the means, over the noise variance: what the strokes say of the slopes. */
  readonly slopeInformation: readonly [number, number, number, number];
  readonly slopeScores: readonly [number, number];
  /** Stroke-to-stroke standard deviation. */
  readonly scale: number;
}

/** The normal of one side in one direction as it is lent, by index of MEASURES; null: too few had that measure. */
export interface LentNormal {
  /** When the last stroke that it is made of was made, milliseconds since 1970. */
  readonly learntAtMs: number;
  readonly measures: readonly (LentMeasure | null)[];
}

/** The strokes that the normal to be lent will be made of, then that normal, which stands. */
export interface Lending {
  readonly side: string;
  readonly direction: Direction;
  conditions: Conditions[];
  /** By stroke, by measure, on the measure's scale. */
  values: (number | null)[][];
  normal: LentNormal | null;
}

/** Nothing to lend yet. */
export function beginLending(side: string, direction: Direction): Lending {
  return { side, direction, conditions: [], values: [], normal: null };
}

/** Takes in one stroke; with the last one needed the normal is made. Later ones change nothing. */
export function lend(
  lending: Lending,
  conditions: Conditions,
  atMs: number,
  values: (number | null)[],
): void {
  if (lending.normal !== null) return;
  lending.conditions.push(conditions);
  lending.values.push(values);
  if (lending.values.length < LEARNING_STROKES) return;
  const whole = wholeStrokes(lending.values);
  const measures = MEASURE_NAMES.map((name, index) => lentMeasure(lending, name, index, whole));
  Object.assign(lending, { normal: { learntAtMs: atMs, measures }, conditions: [], values: [] });
}

/** After work that changed the mechanism the count begins anew; a normal that was lent already stands. */
export function restartLending(lending: Lending): void {
  if (lending.normal === null) Object.assign(lending, { conditions: [], values: [] });
}

/** A stroke that has the measure: its value, what it is regressed on, and what was recorded of its conditions. */
interface KnownStroke {
  readonly value: number;
  readonly row: readonly number[];
  readonly conditions: Conditions;
}

/**
 * One measure to be lent; null where fewer than half of the strokes have it. Strokes that were broken off or taken up
 * again are left out: they would spread so wide that the borrower would take parts of strokes for whole ones.
 */
function lentMeasure(
  { conditions, values }: Lending,
  name: MeasureName,
  index: number,
  whole: readonly boolean[],
): LentMeasure | null {
  const known = values.flatMap((stroke, i): KnownStroke[] => {
    const value = stroke[index];
    return value === null || !whole[i]
      ? []
      : [{ value, row: regressors(conditions[i], BY_AMBIENT), conditions: conditions[i] }];
  });
  if (known.length < LEARNING_STROKES / 2) return null;
  const seesSupply = known.some((stroke) => stroke.conditions[0] !== null);
  const prior = seesSupply ? PRIORS[name] : unseenSupply(PRIORS[name]);
  const fit = fitAlone(known, prior);
  return fit === null ? null : summarised(known, fit, prior);
}

function fitAlone(known: readonly KnownStroke[], prior: MeasurePrior): ShrunkRegression | null {
  const responses = known.map(({ value }) => value);
  const slopes = [prior.perVolt, prior.perDegree];
  return shrunkRegression(
    known.map(({ row }) => row),
    responses,
    {
      prior: {
        means: [median(responses), ...slopes.map(({ mean }) => mean)],
        standardDeviations: [prior.levelSpread, ...slopes.map(({ spread }) => spread)],
      },
      scaleFloor: prior.scaleFloor,
      priorScale: { scale: prior.scale, weight: prior.scaleWeight },
      correctScale: true,
    },
  );
}

/**
 * What the strokes tell without any prior: their means, and the products about those, weighted as in the fit, over its
 * noise variance.
 */
function summarised(
  known: readonly KnownStroke[],
  { weights, scale }: ShrunkRegression,
  prior: MeasurePrior,
): LentMeasure {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: (stroke: KnownStroke) => number) =>
    known.reduce((sum, stroke, i) => sum + weights[i] * of(stroke), 0) / total;
  const value = mean((stroke) => stroke.value);
  const [volts, degrees] = [1, 2].map((place) => mean(({ row }) => row[place]));
  const noise = scale ** 2;
  const about = (of: (stroke: KnownStroke) => number) => rounded((total * mean(of)) / noise);
  const cross = about(({ row }) => (row[1] - volts) * (row[2] - degrees));
  return {
    conditions: [rounded(volts), rounded(degrees)],
    value: rounded(value),
    variance: rounded(noise / total + unrecordedVariance(prior, known)),
    slopeInformation: [
      about(({ row }) => (row[1] - volts) ** 2),
      cross,
      cross,
      about(({ row }) => (row[2] - degrees) ** 2),
    ],
    slopeScores: [
      about((stroke) => (stroke.row[1] - volts) * (stroke.value - value)),
      about((stroke) => (stroke.row[2] - degrees) * (stroke.value - value)),
    ],
    scale: rounded(scale),
  };
}

/**
 * The variance of a supply or temperature that was not recorded: it may have been off on all strokes of a season alike.
 */
function unrecordedVariance(prior: MeasurePrior, strokes: readonly KnownStroke[]): number {
  return [prior.perVolt, prior.perDegree].reduce((sum, slope, i) => {
    const part = strokes.filter(({ conditions }) => conditions[i] === null).length / strokes.length;
    return sum + (part * UNRECORDED[i] * Math.hypot(slope.mean, slope.spread)) ** 2;
  }, 0);
}

/** To eight digits: enough for any limit, and half the text of the room's state. */
function rounded(value: number): number {
  return Number(value.toPrecision(8));
}
