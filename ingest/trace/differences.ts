/** Whole numbers as their first one and zigzag residuals of the steps between them. */
export interface Differences {
  readonly first: number;
  /** Greatest common divisor of all steps: a converter's count in the sender's unit. At least 1. */
  readonly factor: number;
  /** The usual step, in factors: 0 for a current, the period for sample times. */
  readonly drift: number;
  /** One fewer than the numbers. */
  readonly residuals: Float64Array;
}

export function differences(integers: Float64Array): Differences {
  const count = Math.max(0, integers.length - 1);
  const residuals = new Float64Array(count);
  let factor = 0;
  for (let i = 0; i < count; i++) {
    const step = integers[i + 1] - integers[i];
    residuals[i] = step;
    if (factor !== 1) factor = greatestCommonDivisor(factor, Math.abs(step));
  }
  if (factor === 0) factor = 1;
  const drift = middle(residuals) / factor;
  for (let i = 0; i < count; i++) {
    const n = residuals[i] / factor - drift;
    residuals[i] = n < 0 ? -2 * n - 1 : 2 * n;
  }
  return { first: integers[0] ?? 0, factor, drift, residuals };
}

export function integrate({ first, factor, drift, residuals }: Differences, count: number): Float64Array {
  const integers = new Float64Array(count);
  if (count === 0) return integers;
  let n = first;
  integers[0] = n;
  for (let i = 1; i < count; i++) {
    const u = residuals[i - 1];
    n += ((u % 2 === 0 ? u / 2 : -(u + 1) / 2) + drift) * factor;
    integers[i] = n;
  }
  return integers;
}

/** A median of up to 63 steps spread over the series: near enough, and quick. */
function middle(steps: Float64Array): number {
  if (steps.length === 0) return 0;
  const stride = Math.max(1, Math.floor(steps.length / 63));
  const some: number[] = [];
  for (let i = 0; i < steps.length; i += stride) some.push(steps[i]);
  some.sort((a, b) => a - b);
  return some[some.length >> 1];
}

function greatestCommonDivisor(a: number, b: number): number {
  let [large, small] = a > b ? [a, b] : [b, a];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}
