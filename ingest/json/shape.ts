import { DecodeError } from '../decodeError.ts';
import { MAX_DEPTH, MAX_NESTS } from '../limits.ts';

/**
 * Of a body of several strokes, in which one that is too deep is refused by itself: what goes through it afterwards and
 * calls itself for each level gets along with three times as many.
 */
export const MOST_DEPTH_OF_STROKES = 1000;
/** Names of fields, for each object or array that there may be. */
const NAMES_TO_A_NEST = 10;

const QUOTE = 0x22;
const ESCAPE = 0x5c;
const [COLON, OPEN_ARRAY, CLOSE_ARRAY, OPEN_OBJECT, CLOSE_OBJECT] = [0x3a, 0x5b, 0x5d, 0x7b, 0x7d];
const NINE = 0x39;

/**
 * Looks through JSON before it is parsed: a body of nothing but brackets takes thirty times its bytes as objects.
 * Throws `DecodeError` for one that is too deep, or has too many objects, arrays or names. Whether it is JSON at all is
 * left to whoever parses it.
 */
export function checkJsonShape(bytes: Uint8Array, mostNests = MAX_NESTS, mostDepth = MAX_DEPTH): void {
  let depth = 0;
  let nests = 0;
  let names = 0;
  for (let at = 0; at < bytes.length; at++) {
    const byte = bytes[at];
    if (byte === QUOTE) at = endOfText(bytes, at);
    // Digits and what stands between them are nearly all of a stroke.
    else if (byte <= NINE) continue;
    else if (byte === COLON) names++;
    else if (byte === OPEN_ARRAY || byte === OPEN_OBJECT) {
      nests++;
      if (++depth > mostDepth) throw DecodeError.at('', `Nested more than ${mostDepth} deep.`);
    } else if (byte === CLOSE_ARRAY || byte === CLOSE_OBJECT) depth--;
  }
  if (nests > mostNests) throw DecodeError.at('', `More than ${mostNests} objects and arrays.`);
  if (names > mostNests * NAMES_TO_A_NEST) throw DecodeError.at('', 'More names than fields could have.');
}

/** Where the quotation mark stands that ends the text which begins at `start`; the end of all where none does. */
export function endOfText(bytes: Uint8Array, start: number): number {
  for (let at = start + 1; at < bytes.length; at++) {
    if (bytes[at] === ESCAPE) at++;
    else if (bytes[at] === QUOTE) return at;
  }
  return bytes.length;
}
