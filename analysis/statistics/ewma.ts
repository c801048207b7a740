/**
 * Exponentially weighted moving average: each answer is `lambda` of the value and the rest of the answer before.
 *
 * `values`: in order of time, Float64Array or plain numbers; `start`: the average before the first. NaN counts as
 * missing: the average stays as it is. Nothing in, nothing out. RangeError unless 0 < lambda <= 1.
 *
 * Source: S. W. Roberts (1959), Control chart tests based on geometric moving averages.
 */
export function ewma(values: ArrayLike<number>, lambda: number, start: number): Float64Array {
  check(lambda);
  const averages = new Float64Array(values.length);
  let average = start;
  for (let i = 0; i < values.length; i++) {
    if (!Number.isNaN(values[i])) average += lambda * (values[i] - average);
    averages[i] = average;
  }
  return averages;
}

/**
 * Half the width of the limits about the centre after `step` values (from 1), or for ever after where left out:
 * `widths` standard deviations of the average, in the unit of `sigma`.
 *
 * Source: J. M. Lucas, M. S. Saccucci (1990), Exponentially weighted moving average control schemes, equation 2.
 */
export function ewmaHalfWidth(sigma: number, lambda: number, widths: number, step = Infinity): number {
  check(lambda);
  const settled = step === Infinity ? 1 : 1 - (1 - lambda) ** (2 * step);
  return widths * sigma * Math.sqrt((lambda / (2 - lambda)) * settled);
}

function check(lambda: number): void {
  if (!(lambda > 0 && lambda <= 1)) throw new RangeError(`lambda lies above 0 and up to 1, not ${lambda}`);
}
