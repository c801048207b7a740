import { leastSquares } from './leastSquares.ts';

/** Which polynomial is fitted; `order`: its degree. */
export interface SavitzkyGolayOptions {
  /** Odd number of values under the polynomial. */
  readonly window: number;
  readonly order: number;
  /** 0 smooths, 1 and 2 are derivatives by the distance of neighbouring values. */
  readonly derivative?: number;
  /** Distance of neighbouring values, 1 unless told. */
  readonly spacing?: number;
}

/**
 * Value or derivative of the least-squares polynomial over a moving window; at the ends that of the first and last
 * full window.
 *
 * `values`: evenly spaced, no gaps. Fewer than a window answer NaN throughout. RangeError unless the window is odd
 * and wider than the order.
 *
 * Source: A. Savitzky, M. J. E. Golay (1964), Smoothing and differentiation of data by simplified least squares
 * procedures; ends by P. A. Gorry (1990).
 */
export function savitzkyGolay(values: ArrayLike<number>, options: SavitzkyGolayOptions): Float64Array {
  const { window } = options;
  const half = (window - 1) / 2;
  const n = values.length;
  const result = new Float64Array(n).fill(Number.NaN);
  const centre = savitzkyGolayCoefficients(options, half);
  if (n < window) return result;
  for (let i = half; i < n - half; i++) result[i] = weigh(values, i - half, centre);
  for (let i = 0; i < half; i++) {
    result[i] = weigh(values, 0, savitzkyGolayCoefficients(options, i));
    result[n - 1 - i] = weigh(values, n - window, savitzkyGolayCoefficients(options, window - 1 - i));
  }
  return result;
}

/** Factor of each of the window's values for the polynomial's value or derivative at `place` (from 0) within it. */
export function savitzkyGolayCoefficients(
  { window, order, derivative = 0, spacing = 1 }: SavitzkyGolayOptions,
  place: number,
): Float64Array {
  if (!(window % 2 === 1 && order >= 0 && window > order && derivative >= 0)) {
    throw new RangeError(`an odd window wider than the order is needed, not ${window} and ${order}`);
  }
  if (derivative > order) return new Float64Array(window);
  const half = (window - 1) / 2;
  // Powers of -1 to 1 rather than of the index: high orders would lose digits.
  const scale = half === 0 ? 1 : half;
  const at = Array.from({ length: window }, (_, i) => (i - half) / scale);
  const rows = at.map((t) => Array.from({ length: order + 1 }, (_, power) => t ** power));
  const target = (place - half) / scale;
  return Float64Array.from({ length: window }, (_, i) => {
    const unit = new Float64Array(window);
    unit[i] = 1;
    // More places than powers, all different: the columns are never collinear.
    const { coefficients } = leastSquares(rows, unit)!;
    return derivativeAt(coefficients, target, derivative) / (scale * spacing) ** derivative;
  });
}

function derivativeAt(coefficients: Float64Array, t: number, derivative: number): number {
  let sum = 0;
  for (let power = derivative; power < coefficients.length; power++) {
    let factor = coefficients[power];
    for (let d = 0; d < derivative; d++) factor *= power - d;
    sum += factor * t ** (power - derivative);
  }
  return sum;
}

function weigh(values: ArrayLike<number>, start: number, coefficients: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < coefficients.length; i++) sum += coefficients[i] * values[start + i];
  return sum;
}
