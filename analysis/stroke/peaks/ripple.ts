import { differences } from '../../statistics/differences.ts';
import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';
import { ReusedArray } from '../../statistics/reusedArray.ts';

/**
 * How many periods a ripple may have within the part, and the steps in which they are searched, first coarse, then
 * fine. Fewer periods are the slow course; more count as noise here. Guesses, no source.
 */
const FEWEST_PERIODS = 4;
const MOST_PERIODS = 40;
const COARSE_STEP = 0.5;
const FINE_STEP = 0.05;
/** The part is averaged to this many means before a ripple is looked for. */
const MEANS = 160;
/** Values are limited to this many deviations, because peaks are no part of a ripple. A guess, no source. */
const DRAWN_IN_AT = 1.5;
/** A ripple is regular if without it the spread is at most this part of what it was. A guess, no source. */
const LEFT_PART = 0.5;

const [forDrawnIn, forPhases] = [new ReusedArray(), new ReusedArray()];

interface Sine {
  readonly cosine: number;
  readonly sine: number;
  readonly periods: number;
}

/**
 * The regular ripple of a part, such as the teeth of a gear cause: the sine along the travel that explains most of the
 * current's departures from its course, by least squares (N. R. Lomb, 1976). One value for each sample, amperes. Null
 * where no sine halves the spread of the departures. `departures` (amperes) and `positions` have the same length.
 */
export function rippleOf(departures: Float64Array, positions: Float64Array): Float64Array | null {
  const spread = medianAbsoluteDeviation(departures);
  const span = Math.abs(positions[positions.length - 1] - positions[0]);
  if (!(spread > 0) || !(span > 0)) return null;
  const n = departures.length;
  const drawnIn = forDrawnIn.ofLength(n);
  const phases = forPhases.ofLength(n);
  for (let i = 0; i < n; i++) {
    drawnIn[i] = Math.max(-DRAWN_IN_AT * spread, Math.min(DRAWN_IN_AT * spread, departures[i]));
    phases[i] = (2 * Math.PI * (positions[i] - positions[0])) / span;
  }
  const [values, at] = [blockMeans(drawnIn), blockMeans(phases)];
  const most = Math.min(MOST_PERIODS, values.length / 4);
  const coarse = bestSine(values, at, FEWEST_PERIODS, most, COARSE_STEP);
  if (coarse === null) return null;
  const [from, to] = [coarse.periods - COARSE_STEP, coarse.periods + COARSE_STEP];
  const best = bestSine(values, at, from, to, FINE_STEP) ?? coarse;
  const ripple = new Float64Array(n);
  for (let i = 0; i < n; i++) ripple[i] = sineAt(best, phases[i]);
  if (medianAbsoluteDeviation(differences(departures, ripple)) > LEFT_PART * spread) return null;
  return ripple;
}

/** The sine that lowers the sum of squares most. `at`: where each value lies, with 2π over the whole part. */
function bestSine(
  values: Float64Array,
  at: Float64Array,
  from: number,
  to: number,
  step: number,
): Sine | null {
  let best: Sine | null = null;
  let most = 0;
  for (let periods = from; periods <= to; periods += step) {
    const { fit, explained } = fitSine(values, at, periods);
    if (explained > most) [best, most] = [fit, explained];
  }
  return best;
}

function fitSine(values: Float64Array, at: Float64Array, periods: number): { fit: Sine; explained: number } {
  let [cc, ss, cs, cy, sy] = [0, 0, 0, 0, 0];
  for (let i = 0; i < values.length; i++) {
    const c = Math.cos(periods * at[i]);
    const s = Math.sin(periods * at[i]);
    cc += c * c;
    ss += s * s;
    cs += c * s;
    cy += c * values[i];
    sy += s * values[i];
  }
  const determinant = cc * ss - cs * cs;
  const cosine = (cy * ss - sy * cs) / determinant;
  const sine = (sy * cc - cy * cs) / determinant;
  return { fit: { cosine, sine, periods }, explained: cosine * cy + sine * sy };
}

const sineAt = ({ cosine, sine, periods }: Sine, phase: number): number =>
  cosine * Math.cos(periods * phase) + sine * Math.sin(periods * phase);

function blockMeans(values: Float64Array): Float64Array {
  const means = new Float64Array(Math.min(MEANS, values.length));
  const startOf = (block: number) => Math.floor((block * values.length) / means.length);
  for (let b = 0; b < means.length; b++) {
    const [from, end] = [startOf(b), startOf(b + 1)];
    let sum = 0;
    for (let i = from; i < end; i++) sum += values[i];
    means[b] = sum / (end - from);
  }
  return means;
}
