import { type CborItems, INDEFINITE, MAJOR } from './cborItems.ts';

/** A double of 20 decimal digits has exponents from -344 to 308. */
export const MOST_EXPONENT = 400;

/**
 * The double nearest to a decimal fraction, an array of an exponent of ten and a whole number (RFC 8949, section
 * 3.4.4), which begins here. Null where it is none, or its numbers are larger than anybody's: then it may have been
 * read in part.
 */
export function decimalFraction(items: CborItems): number | null {
  items.head();
  const { major, argument } = items;
  if (major !== MAJOR.array || (argument !== 2 && argument !== INDEFINITE)) return null;
  const exponent = wholeNumber(items);
  if (exponent === null || exponent < -MOST_EXPONENT || exponent > MOST_EXPONENT) return null;
  const mantissa = wholeNumber(items);
  if (mantissa === null || (argument === INDEFINITE && !items.atBreak())) return null;
  // A power of ten and a product of it would each be rounded; what is parsed is rounded once.
  return Number(`${mantissa}e${exponent}`);
}

function wholeNumber(items: CborItems): number | bigint | null {
  const major = items.nextMajor();
  if (major !== MAJOR.unsigned && major !== MAJOR.negative) return null;
  items.head();
  return items.wholeNumber();
}
