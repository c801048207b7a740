import { mean } from 'simple-statistics';
import { MEASURE_INDEX, type MeasureName } from '../measures.ts';
import { median } from '../statistics/median.ts';
import { type ShrunkRegression, shrunkRegression } from '../statistics/shrunkRegression.ts';
import { borrowedFit } from './borrowedFit.ts';
import { type Channel, type Fit, isBorrowing, type Shape } from './channel.ts';
import { BY_SEASON, PER_DEGREE_VARIANCE, regressors, type Weather } from './conditions.ts';
import type { LentPrior } from './lent.ts';
import { type MeasurePrior, PRIORS, unseenSupply, unseenTemperature } from './priors.ts';
import { stallFollowsSupply } from './stallFollowsSupply.ts';
import { RELEARNING_STROKES } from './strokesNeeded.ts';

/**
 * The measures that take the weather from the copper: those of the force that a room takes. The measures that the
 * copper is read from would explain themselves, and a share follows no weather.
 */
const BY_COPPER: ReadonlySet<MeasureName> = new Set(['runningAmps', 'runningAmpsP90']);

/** Where a measure's normal takes the temperature from. */
export function weatherFor({ weather }: Channel, measure: MeasureName): Weather {
  return weather.by === 'copper' && !BY_COPPER.has(measure) ? BY_SEASON : weather;
}

/**
 * The fit of one measure to those reference strokes that were `whole` (`wholeStrokes`); null: too few, or nothing to
 * start from.
 */
export function fitMeasure(
  channel: Channel,
  name: MeasureName,
  whole: readonly boolean[],
  weather = weatherFor(channel, name),
): Fit | null {
  const index = MEASURE_INDEX[name];
  const bySeason = weather.by === 'season';
  const { rows, responses } = reference(channel, index, whole, weather);
  const prior = PRIORS[name];
  const shape = channel.shapes[index];
  const seesSupply = channel.conditions.some(([volts]) => volts !== null);
  const powered = seesSupply ? prior : unseenSupply(prior);
  const known = bySeason ? unseenTemperature(powered) : powered;
  const lent = shape === null ? lentPrior(channel, index, bySeason) : null;
  if (rows.length < leastRows(shape, lent)) return null;
  // A measure that nobody lends is learnt as it would be alone, from more strokes.
  if (lent === null && isBorrowing(channel)) return null;
  const options = optionsOf(known, shape, median(responses));
  const fitOwn = weather.by === 'ambient' ? besidesWearingIn : shrunkRegression;
  const fitted = lent === null ? fitOwn(rows, responses, options) : borrowedFit(rows, responses, known, lent);
  if (fitted === null) return null;
  return {
    coefficients: Array.from(fitted.coefficients),
    covariance: Array.from(fitted.covariance),
    scale: fitted.scale,
    degreesOfFreedom: Math.max(
      3,
      (lent?.scaleWeight ?? options.priorScale.weight) +
        rows.length -
        Math.min(rows.length, fitted.effectiveParameters),
    ),
  };
}

/**
 * A new or mended room wears in by two thirds within this many strokes, and by about this many standard deviations of a
 * stroke. Guesses, no source.
 */
const WEARING_IN = { strokes: 6, spreads: 3 };

/**
 * The fit with one more regressor, a course that dies out. Without it a room that wears in, or dries, while spring
 * turns to summer would seem to follow the weather. The course is taken about its own mean, so that the level stays
 * that of all strokes. Where it cannot be told from weather the prior slopes decide. Only used where the temperature
 * was recorded: the season changes as evenly as a room wears in.
 */
function besidesWearingIn(
  rows: readonly number[][],
  responses: readonly number[],
  options: ReturnType<typeof optionsOf>,
): ShrunkRegression | null {
  const course = rows.map((_, i) => Math.exp(-i / WEARING_IN.strokes));
  const middle = course.length === 0 ? 0 : mean(course);
  const { means, standardDeviations } = options.prior;
  const fitted = shrunkRegression(
    rows.map((row, i) => [...row, course[i] - middle]),
    responses,
    {
      ...options,
      prior: {
        means: [...means, 0],
        standardDeviations: [...standardDeviations, WEARING_IN.spreads * options.priorScale.scale],
      },
    },
  );
  if (fitted === null) return null;
  const size = means.length;
  return {
    ...fitted,
    coefficients: fitted.coefficients.slice(0, size),
    covariance: fitted.covariance.filter((_, at) => at % (size + 1) < size && at < size * (size + 1)),
  };
}

/** The reference strokes that count for a measure: what they are regressed on, and what they read. */
function reference(channel: Channel, index: number, whole: readonly boolean[], weather: Weather) {
  const rows: number[][] = [];
  const responses: number[] = [];
  channel.values.forEach((values, stroke) => {
    const value = values[index];
    if (value === null || !whole[stroke]) return;
    rows.push(regressors(channel.conditions[stroke], weather));
    responses.push(value);
  });
  return { rows, responses };
}

/** Strokes that a fit needs: fewer where something is known from before or lent. */
function leastRows(shape: Shape | null, lent: LentPrior | null): number {
  if (lent !== null) return 1;
  return shape === null ? 3 : RELEARNING_STROKES;
}

/**
 * What is lent to a measure. Its slope is per degree of temperature: for a room that goes by the season it tells how
 * much weather matters, not which way.
 */
function lentPrior(channel: Channel, index: number, bySeason: boolean): LentPrior | null {
  const lent = channel.lent?.measures[index] ?? null;
  if (lent === null || !bySeason) return lent;
  const [level, perVolt, perDegree] = lent.means;
  const covariance = [...lent.covariance];
  covariance[PER_DEGREE_VARIANCE] += perDegree ** 2;
  return { ...lent, means: [level, perVolt, 0], covariance };
}

function optionsOf(prior: MeasurePrior, shape: Shape | null, level: number) {
  const slopes = shape?.slopes ?? [prior.perVolt.mean, prior.perDegree.mean];
  const spreads = shape?.spreads ?? [prior.perVolt.spread, prior.perDegree.spread];
  return {
    prior: { means: [level, ...slopes], standardDeviations: [prior.levelSpread, ...spreads] },
    scaleFloor: prior.scaleFloor,
    priorScale: { scale: shape?.scale ?? prior.scale, weight: shape?.weight ?? prior.scaleWeight },
    correctScale: true,
  };
}

/**
 * The spread left over from 16 strokes is known to a fifth (the standard error of a normal's standard deviation). The
 * season counts as telling the weather better than the copper only if it leaves less by more than twice that.
 */
const LEAVES_MORE = 1.4;

/** Whether the copper tells the weather of the running current; false where the season tells it much better. */
export function isToldByCopper(channel: Channel, whole: readonly boolean[]): boolean {
  if (!stallFollowsSupply(channel, fitMeasure(channel, 'endStopAmps', whole))) return false;
  const [byCopper, bySeason] = [channel.weather, BY_SEASON].map((weather) =>
    fitMeasure(channel, 'runningAmps', whole, weather),
  );
  return byCopper !== null && (bySeason === null || byCopper.scale <= LEAVES_MORE * bySeason.scale);
}
