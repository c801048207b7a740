/** How a CUSUM is drawn: `target` in the unit of the values. */
export interface CusumOptions {
  readonly target: number;
  /** Reference value, in the unit of the values: half the shift to be found. */
  readonly k: number;
  /** Decision interval, in the unit of the values: a sum beyond it is a signal. */
  readonly h: number;
  /** Where both sums start; h / 2 gives a fast initial response. */
  readonly headstart?: number;
}

/** A two-sided CUSUM. */
export interface Cusum {
  /** Sums for a rise and for a fall, both at least 0, one per value. */
  readonly high: Float64Array;
  readonly low: Float64Array;
  /** For how many values in a row each sum has been above 0. */
  readonly highCount: Int32Array;
  readonly lowCount: Int32Array;
  /** Indices (from 0) at which a sum is beyond `h`, in order. */
  readonly highSignals: number[];
  readonly lowSignals: number[];
}

/**
 * Tabular cumulative sums of the deviations from a target, for a rise and for a fall.
 *
 * `values`: in order of time, Float64Array or plain numbers. NaN counts as missing: both sums stay as they are.
 * Nothing in, nothing out. RangeError for a negative `k` or `h`. Sums go on after a signal; nothing is reset.
 *
 * Source: E. S. Page (1954), Continuous inspection schemes; headstart of J. M. Lucas, R. B. Crosier (1982).
 */
export function cusum(values: ArrayLike<number>, { target, k, h, headstart = 0 }: CusumOptions): Cusum {
  if (!(k >= 0 && h >= 0)) throw new RangeError(`k and h are at least 0, not ${k} and ${h}`);
  const deviations = Float64Array.from(values, (value) => value - target);
  const [high, highCount, highSignals] = oneSided(deviations, k, h, headstart);
  const falls = deviations.map((deviation) => -deviation);
  const [low, lowCount, lowSignals] = oneSided(falls, k, h, headstart);
  return { high, low, highCount, lowCount, highSignals, lowSignals };
}

function oneSided(deviations: Float64Array, k: number, h: number, headstart: number) {
  const sums = new Float64Array(deviations.length);
  const counts = new Int32Array(deviations.length);
  const signals: number[] = [];
  let sum = headstart;
  let count = 0;
  for (let i = 0; i < deviations.length; i++) {
    if (!Number.isNaN(deviations[i])) {
      sum = cusumStep(sum, deviations[i], k);
      count = sum > 0 ? count + 1 : 0;
    }
    sums[i] = sum;
    counts[i] = count;
    if (sum > h) signals.push(i);
  }
  return [sums, counts, signals] as const;
}

/** One step of the one-sided sum: what it is after a further deviation from the target. */
export function cusumStep(sum: number, deviation: number, k: number): number {
  return Math.max(0, sum + deviation - k);
}

/**
 * The rise that a signal speaks of: the index of the first value after the change, and the mean since. Taken from
 * the sum and count at the signal (for a fall, mirror the values).
 *
 * Source: D. C. Montgomery, Introduction to Statistical Quality Control, section on the tabular cusum.
 */
export function cusumChange(
  { high, highCount }: Pick<Cusum, 'high' | 'highCount'>,
  signal: number,
  { target, k }: Pick<CusumOptions, 'target' | 'k'>,
): { firstIndex: number; mean: number } {
  const count = highCount[signal];
  if (!(count > 0)) throw new RangeError(`the sum at ${signal} is 0: no change to speak of`);
  return { firstIndex: signal - count + 1, mean: target + k + high[signal] / count };
}
