import { MOST_EXPONENT } from './decimalFraction.ts';
import { TYPED_ARRAY_TAGS } from './typedArray.ts';

/** The tags that have a meaning here (RFC 8949, section 3.4), beside those of typed arrays. */
export const TAG = {
  dateTime: 0,
  epochTime: 1,
  bignum: 2,
  negativeBignum: 3,
  decimalFraction: 4,
  homogeneousArray: 41,
  selfDescribed: 55_799,
} as const;

const TYPED_ARRAYS = new Set(TYPED_ARRAY_TAGS);

/** Whether the tag is that of a typed array (RFC 8746). */
export function isTypedArray(tag: number): boolean {
  return TYPED_ARRAYS.has(tag);
}

/** Whether the tag is that of a whole number in bytes. */
export function isBignum(tag: number): boolean {
  return tag === TAG.bignum || tag === TAG.negativeBignum;
}

/** What must follow the tag, for whoever sent something else with it. */
export function refusalOf(tag: number): string {
  if (isBignum(tag)) return 'A bignum must be a byte string of at most 64 bits';
  if (tag === TAG.epochTime) return 'A time by tag 1 must be a number of seconds since 1970';
  if (tag === TAG.decimalFraction) {
    return `A decimal fraction must be an exponent from -${MOST_EXPONENT} to ${MOST_EXPONENT} and a whole number of 64 bits`;
  }
  if (tag === TAG.homogeneousArray) return 'A homogeneous array must be an array';
  if (isTypedArray(tag)) return 'A typed array must be a byte string of a whole number of numbers';
  return `Tag ${tag} has no meaning here`;
}
