/** Of the bits behind the first 53 of a significand those that stand in the third word; the fourth follows them. */
const LATER_BITS = 2 ** 28;
const EXPONENT_BIAS = 16_383;
const NO_NUMBER = 0x7fff;
/** Below it a double has fewer bits the smaller it is. */
const SMALLEST_NORMAL_EXPONENT = -1022;
/** What a significand of 53 bits is a whole number of. */
const FRACTION_BITS = 52;

/**
 * The double nearest to an IEEE 754 binary128, of two the even one. (It has 113 bits; no machine of ours knows it.)
 */
export function quadrupleFloat(view: DataView, at: number, littleEndian: boolean): number {
  const [begin, step] = littleEndian ? [at + 12, -4] : [at, 4];
  const first = view.getUint32(begin, littleEndian);
  const second = view.getUint32(begin + step, littleEndian);
  const third = view.getUint32(begin + 2 * step, littleEndian);
  const fourth = view.getUint32(begin + 3 * step, littleEndian);
  const sign = first >>> 31 === 1 ? -1 : 1;
  const biased = (first >>> 16) & NO_NUMBER;
  const leading = (first & 0xffff) * 2 ** 36 + second * 2 ** 4 + (third >>> 28);
  const later = third & (LATER_BITS - 1);
  if (biased === NO_NUMBER) {
    return leading === 0 && later === 0 && fourth === 0 ? sign * Number.POSITIVE_INFINITY : Number.NaN;
  }
  // Those without a leading one are smaller than any double.
  if (biased === 0) return sign * 0;
  const exponent = biased - EXPONENT_BIAS;
  const significand = 2 ** FRACTION_BITS + leading;
  return exponent < SMALLEST_NORMAL_EXPONENT
    ? sign * subnormal(significand, later + fourth > 0, SMALLEST_NORMAL_EXPONENT - exponent)
    : sign * rounded(significand, later, fourth) * 2 ** (exponent - FRACTION_BITS);
}

function rounded(significand: number, later: number, fourth: number): number {
  const half = LATER_BITS / 2;
  const tie = later === half && fourth === 0;
  const up = tie ? significand % 2 === 1 : later >= half;
  return up ? significand + 1 : significand;
}

/** All steps are exact: what is cut off is so many bits of the significand, and whether any were behind it. */
function subnormal(significand: number, isMore: boolean, bitsTooMany: number): number {
  if (bitsTooMany > FRACTION_BITS + 1) return 0;
  const step = 2 ** bitsTooMany;
  const whole = Math.floor(significand / step);
  const left = significand - whole * step;
  const tie = left === step / 2 && !isMore;
  const up = tie ? whole % 2 === 1 : left >= step / 2;
  return (up ? whole + 1 : whole) * Number.MIN_VALUE;
}
