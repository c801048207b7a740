/** What strokes and a shape have in common, each less its mean. */
export interface Sums {
  readonly count: number;
  /** What a stroke keeps of the error of the one before, 0 up to 1. */
  readonly memory: number;
  /** Squares of a constant of 1. */
  readonly ones: number;
  /** Means of the strokes and of the shape, weighed as the memory asks. */
  readonly valueMean: number;
  readonly shapeMean: number;
  /** Squares and products of the deviations from those means. */
  readonly values: number;
  readonly shapes: number;
  readonly products: number;
}

/**
 * A series less `memory` times the stroke before, the first by the root of what memory leaves: errors that are
 * autoregressive of first order become independent of each other, and no stroke is lost.
 *
 * Source: S. J. Prais, C. B. Winsten (1954), Trend estimators and serial correlation.
 */
function takeMemoryOut(series: Float64Array, memory: number): Float64Array {
  const out = new Float64Array(series.length);
  out[0] = Math.sqrt(1 - memory * memory) * series[0];
  for (let i = 1; i < series.length; i++) out[i] = series[i] - memory * series[i - 1];
  return out;
}

/** The sums of `values` with any shape, `memory` taken out of both; the shape is nothing up to and with stroke `onset`. */
export function sumsWithout(
  memory: number,
  values: Float64Array,
): (shape: Float64Array, onset: number) => Sums {
  const count = values.length;
  const constant = takeMemoryOut(new Float64Array(count).fill(1), memory);
  const own = takeMemoryOut(values, memory);
  const ones = product(constant, constant);
  const valueSum = product(own, constant);
  const valuesLeft = product(own, own) - (valueSum * valueSum) / ones;
  return (shape, onset) => {
    let shapeSum = 0;
    let squares = 0;
    let products = 0;
    for (let i = onset + 1; i < count; i++) {
      const its = shape[i] - memory * shape[i - 1];
      shapeSum += its * constant[i];
      squares += its * its;
      products += its * own[i];
    }
    return {
      count,
      memory,
      ones,
      valueMean: valueSum / ones,
      shapeMean: shapeSum / ones,
      values: valuesLeft,
      shapes: squares - (shapeSum * shapeSum) / ones,
      products: products - (valueSum * shapeSum) / ones,
    };
  };
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}
