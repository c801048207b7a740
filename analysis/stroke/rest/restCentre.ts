import { median } from '../../statistics/median.ts';
import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';

/** So many median deviations from the middle of a rest, or this part of what the motor draws, and a reading is an outlier. */
const OUTLYING_DEVIATIONS = 5;
const OUTLYING_PART = 0.1;
/** A reading one step away, and how numbers are kept. */
const ONE_STEP = 1.01;

/**
 * Mean and standard deviation of the rest without its outliers: a coarse sensor flickers between two readings, of
 * which a median would take one and a median deviation see nothing.
 */
export function restCentre(
  rest: Float64Array,
  activeAmps: number,
  stepAmps: number,
): { mean: number; deviation: number } {
  const middle = median(rest);
  const reach = Math.max(
    OUTLYING_DEVIATIONS * medianAbsoluteDeviation(rest),
    OUTLYING_PART * activeAmps,
    ONE_STEP * stepAmps,
  );
  const isKept = (value: number) => Math.abs(value - middle) <= reach;
  let [count, sum] = [0, 0];
  for (const value of rest) {
    if (!isKept(value)) continue;
    sum += value;
    count++;
  }
  const mean = sum / count;
  let squares = 0;
  for (const value of rest) if (isKept(value)) squares += (value - mean) ** 2;
  return { mean, deviation: Math.sqrt(squares / Math.max(1, count - 1)) };
}

/** A reading that a sensor flickers to comes so often: what comes seldom is an outlier, or the foot of a start. */
const FLICKER_PART = 0.05;
const FEWEST_FLICKERS = 3;

/** From the usual reading of a rest to the next one that comes often; 0 where there is none. */
export function flickerStep(rest: Float64Array): number {
  const middle = median(rest);
  let step = Infinity;
  for (const value of rest) if (value !== middle) step = Math.min(step, Math.abs(value - middle));
  let count = 0;
  for (const value of rest) {
    const away = Math.abs(value - middle);
    if (away > 0 && away < ONE_STEP * step) count++;
  }
  return count >= Math.max(FEWEST_FLICKERS, FLICKER_PART * rest.length) ? step : 0;
}
