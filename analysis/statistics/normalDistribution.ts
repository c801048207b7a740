/** Coefficients of W. J. Cody's rational approximations, highest power first: numerator over denominator. */
const CENTRE_TOP = [
  0.06568233791820745, 2.2352520354606837, 161.02823106855587, 1067.6894854603709, 18154.98125334356,
];
const CENTRE_BOTTOM = [1, 47.202581904688245, 976.0985517377767, 10260.932208618979, 45507.78933502673];
const MIDDLE_TOP = [
  1.0765576773720192e-8, 0.39894151208813466, 8.883149794388377, 93.50665613217785, 597.2702763948002,
  2494.5375852903726, 6848.190450536283, 11602.65143764735, 9842.714838383978,
];
const MIDDLE_BOTTOM = [
  1, 22.266688044328117, 235.387901782625, 1519.3775994075547, 6485.558298266761, 18615.571640885097,
  34900.95272114598, 38912.00328609327, 19685.429676859992,
];
const FAR_TOP = [
  0.023073441764940174, 0.215898534057957, 0.12740116116024736, 0.022235277870649807, 0.0014216191932278934,
  0.000029112874951168793,
];
const FAR_BOTTOM = [
  1, 1.284260096144911, 0.4682382124808651, 0.06598813786892856, 0.0037823963320275824,
  0.00007297515550839662,
];
const ONE_BY_ROOT_TWO_PI = 0.3989422804014327;

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return ONE_BY_ROOT_TWO_PI * Math.exp(-0.5 * z * z);
}

/** Share of the standard normal distribution below `z`, to 1e-14 relative in both tails. */
export function normalDistribution(z: number): number {
  return normalUpperTail(-z);
}

/**
 * Share of the standard normal distribution above `z`, to 1e-14 relative in both tails.
 *
 * Source: W. J. Cody (1969), Rational Chebyshev approximations for the error function, as arranged for the normal
 * distribution in W. J. Cody (1993), Algorithm 715.
 */
export function normalUpperTail(z: number): number {
  const y = Math.abs(z);
  if (y <= 0.67448975) {
    const square = y > 1e-16 ? y * y : 0;
    return 0.5 - (z * polynomial(CENTRE_TOP, square)) / polynomial(CENTRE_BOTTOM, square);
  }
  const tail = y <= 5.656854249492381 ? middle(y) : far(y);
  return z > 0 ? tail : 1 - tail;
}

function middle(y: number): number {
  return (exponential(y) * polynomial(MIDDLE_TOP, y)) / polynomial(MIDDLE_BOTTOM, y);
}

function far(y: number): number {
  if (y > 38.6) return 0;
  const inverse = 1 / (y * y);
  const ratio = (inverse * polynomial(FAR_TOP, inverse)) / polynomial(FAR_BOTTOM, inverse);
  return (exponential(y) * (ONE_BY_ROOT_TWO_PI - ratio)) / y;
}

/** exp(-y²/2) in two factors, the first with an exact square: one factor would lose digits far out. */
function exponential(y: number): number {
  const coarse = Math.trunc(y * 16) / 16;
  return Math.exp(-0.5 * coarse * coarse) * Math.exp(-0.5 * (y - coarse) * (y + coarse));
}

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (const coefficient of coefficients) sum = sum * x + coefficient;
  return sum;
}
