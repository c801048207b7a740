/** Halving alone reaches the last bit of any double in fewer steps. */
const MOST_STEPS = 200;

/** A place and the function there. */
interface Point {
  readonly x: number;
  readonly f: number;
}

/**
 * Where `f` is zero between `from` and `to`, at which its signs must differ (RangeError otherwise); to within
 * `tolerance` relative to the root, or to the last bit.
 *
 * Source: T. R. Chandrupatla (1997), A new hybrid quadratic/bisection algorithm, Advances in Engineering Software 28.
 */
export function findRoot(f: (x: number) => number, from: number, to: number, tolerance = 1e-15): number {
  let b = from;
  let a = to;
  let fb = f(b);
  let fa = f(a);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) throw new RangeError(`no change of sign between ${from} and ${to}: ${fb}, ${fa}`);
  let c = a;
  let fc = fa;
  let step = 0.5;
  for (let i = 0; i < MOST_STEPS; i++) {
    const x = a + step * (b - a);
    const fx = f(x);
    if (Math.sign(fx) === Math.sign(fa)) {
      c = a;
      fc = fa;
    } else {
      c = b;
      fc = fb;
      b = a;
      fb = fa;
    }
    a = x;
    fa = fx;
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const margin = (2 * Number.EPSILON * Math.abs(best) + 0.5 * tolerance * Math.abs(best)) / Math.abs(b - a);
    if (margin > 0.5 || fa === 0 || fb === 0) return best;
    step = nextStep({ x: a, f: fa }, { x: b, f: fb }, { x: c, f: fc });
    step = Math.min(1 - margin, Math.max(margin, step));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

/** From the first point towards the second: inverse quadratic interpolation where it can be trusted, else half way. */
function nextStep({ x: a, f: fa }: Point, { x: b, f: fb }: Point, { x: c, f: fc }: Point): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  if (!(phi * phi < xi && (1 - phi) ** 2 < 1 - xi)) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}

/**
 * Where the falling function `f` passes zero above 0: brackets the root from `start` by doubling or halving, then
 * as `findRoot`. RangeError where there is none between 1e-300 and 1e300.
 */
export function findPositiveRoot(f: (x: number) => number, start: number, tolerance?: number): number {
  let low = start;
  let high = start;
  if (f(start) > 0) {
    do {
      low = high;
      high *= 2;
    } while (high < 1e300 && f(high) > 0);
  } else {
    do {
      high = low;
      low /= 2;
    } while (low > 1e-300 && f(low) <= 0);
  }
  return findRoot(f, low, high, tolerance);
}
