/** How a sender's numbers follow from whole numbers, and those whole numbers. */
export interface WholeNumbers {
  readonly form: 'decimal' | 'float32' | 'step';
  /** Digits after the point (`decimal`, `float32`), or the step itself (`step`). */
  readonly parameter: number;
  readonly integers: Float64Array;
}

const MOST_DIGITS = 12;
/** So that a difference of two, in zigzag form, still fits 48 bits. */
const LARGEST = 2 ** 45;

/** In place: `n / 10^digits`, `n / 10^digits` in single precision, or `n * step`. */
export function fromWhole(form: WholeNumbers['form'], parameter: number, numbers: Float64Array): void {
  const scale = 10 ** parameter;
  for (let i = 0; i < numbers.length; i++) {
    if (form === 'step') numbers[i] *= parameter;
    else if (form === 'decimal') numbers[i] /= scale;
    else numbers[i] = Math.fround(numbers[i] / scale);
  }
}

/**
 * Finds the sender's own resolution: whole numbers from which every value follows exactly, to the last bit. null
 * where there is none (a computed signal in full precision). Values are finite and none is -0. `likelyStep`, where it
 * is known, saves looking for a step.
 */
export function findWholeNumbers(values: Float64Array, likelyStep = 0): WholeNumbers | null {
  return (
    decimals(values, 'decimal') ??
    decimals(values, 'float32') ??
    multiples(values, Math.abs(likelyStep)) ??
    steps(values)
  );
}

/** A value with d digits has d + 1 as well, so the digits only ever rise on the way through. */
function decimals(values: Float64Array, form: 'decimal' | 'float32'): WholeNumbers | null {
  const single = form === 'float32';
  let digits = 0;
  let scale = 1;
  let largest = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    const magnitude = Math.abs(value);
    if (magnitude > largest) largest = magnitude;
    for (;;) {
      if (largest * scale > LARGEST) return null;
      const back = Math.round(value * scale) / scale;
      if ((single ? Math.fround(back) : back) === value) break;
      digits++;
      scale = 10 ** digits;
      if (digits > MOST_DIGITS) return null;
    }
  }
  const integers = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) integers[i] = plainZero(Math.round(values[i] * scale));
  return { form, parameter: digits, integers };
}

/** Counts of a converter times amperes a count, multiplied out before sending: `0.036899999999999995`. */
function steps(values: Float64Array): WholeNumbers | null {
  const guess = smallestGap(values);
  if (guess === 0) return null;
  for (let digits = 1; digits <= 17; digits++) {
    const found = multiples(values, Number(guess.toPrecision(digits)));
    if (found !== null) return found;
  }
  return null;
}

/** Null where they are not, or the step is none. */
function multiples(values: Float64Array, step: number): WholeNumbers | null {
  if (!(step > 0)) return null;
  const integers = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    if (!isMultiple(value, step)) return null;
    integers[i] = plainZero(Math.round(value / step));
  }
  return { form: 'step', parameter: step, integers };
}

function isMultiple(value: number, step: number): boolean {
  const n = Math.round(value / step);
  return n * step === value && Math.abs(n) <= LARGEST;
}

/** The smallest distance between two neighbouring levels; 0 when all values are one. */
function smallestGap(values: Float64Array): number {
  const sorted = values.slice().sort();
  let gap = Number.POSITIVE_INFINITY;
  // Levels a rounding error apart are one level.
  const floor = 1e-9 * Math.max(Math.abs(sorted[0]), Math.abs(sorted[sorted.length - 1]));
  for (let i = 1; i < sorted.length; i++) {
    const distance = sorted[i] - sorted[i - 1];
    if (distance > floor && distance < gap) gap = distance;
  }
  return gap === Number.POSITIVE_INFINITY ? 0 : gap;
}

/** `Math.round(-0.2)` is -0, which the whole numbers do not know. */
function plainZero(n: number): number {
  return n === 0 ? 0 : n;
}
