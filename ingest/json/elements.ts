import { endOfText } from './shape.ts';

const QUOTE = 0x22;
const COMMA = 0x2c;
const NINE = 0x39;
const [OPEN_ARRAY, CLOSE_ARRAY, OPEN_OBJECT, CLOSE_OBJECT] = [0x5b, 0x5d, 0x7b, 0x7d];
const SPACES: ReadonlySet<number> = new Set([0x20, 0x09, 0x0a, 0x0d]);

/**
 * Where the objects of a JSON array lie in its bytes, so that each can be parsed by itself; null where it is no array of
 * objects. What is within them is left to whoever parses them: if all of them are JSON, then so is the whole.
 */
export function elementsOf(bytes: Uint8Array): Uint8Array[] | null {
  const elements: Uint8Array[] = [];
  let depth = 0;
  let start = 0;
  /** What may come between the elements: the first of them, one more, a comma or the end, or nothing. */
  let expected: 'array' | 'first' | 'element' | 'comma' | 'nothing' = 'array';
  for (let at = 0; at < bytes.length; at++) {
    const byte = bytes[at];
    if (depth > 1) {
      // Digits and what stands between them are nearly all of a stroke.
      if (byte === QUOTE) at = endOfText(bytes, at);
      else if (byte <= NINE) continue;
      else if (byte === OPEN_ARRAY || byte === OPEN_OBJECT) depth++;
      else if (byte === CLOSE_ARRAY || byte === CLOSE_OBJECT) depth--;
      if (depth > 1) continue;
      elements.push(bytes.subarray(start, at + 1));
      expected = 'comma';
    } else if (byte === OPEN_OBJECT && (expected === 'first' || expected === 'element')) {
      start = at;
      depth = 2;
    } else if (byte === OPEN_ARRAY && expected === 'array') {
      depth = 1;
      expected = 'first';
    } else if (byte === CLOSE_ARRAY && (expected === 'first' || expected === 'comma')) {
      depth = 0;
      expected = 'nothing';
    } else if (byte === COMMA && expected === 'comma') expected = 'element';
    else if (!SPACES.has(byte)) return null;
  }
  return expected === 'nothing' ? elements : null;
}
