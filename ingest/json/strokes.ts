import { DecodeError } from '../decodeError.ts';
import { MAX_STROKES_PER_REQUEST } from '../limits.ts';
import type { IncomingStroke } from '../stroke.ts';
import { decodeStroke, keyOf } from './stroke.ts';
import { UnparsedStroke } from './unparsedStroke.ts';

/** One stroke of a request: read, or not. */
export type DecodedStroke =
  | { readonly stroke: IncomingStroke }
  | { readonly stroke: null; readonly key: string | null; readonly error: DecodeError };

const MOST_FAULTS = 20;

/**
 * Reads a request's body, one stroke or an array of them. One that cannot be read does not hold back the others;
 * throws `DecodeError` when not one could be. Pointers start at the body.
 */
export function decodeStrokes(body: unknown): DecodedStroke[] {
  const decoded = decodeEach(body);
  if (decoded.every((one) => one.stroke === null)) throw whyNone(decoded);
  return decoded;
}

/** The same, and leaves it to whoever asks what to do where not one could be read. */
export function decodeEach(body: unknown): DecodedStroke[] {
  if (!Array.isArray(body)) return [decodeOne(body, '')];
  if (body.length === 0) throw DecodeError.at('', 'There is no stroke in the array.');
  if (body.length > MAX_STROKES_PER_REQUEST) {
    throw DecodeError.at(
      '',
      `At most ${MAX_STROKES_PER_REQUEST} strokes to a request; this has ${body.length}.`,
    );
  }
  // One that is no JSON makes the whole body none.
  return body.map((value, index) =>
    decodeOne(value instanceof UnparsedStroke ? value.parse() : value, `/${index}`),
  );
}

/** The first of all faults. */
export function whyNone(decoded: readonly DecodedStroke[]): DecodeError {
  return new DecodeError(
    decoded.flatMap((one) => (one.stroke ? [] : one.error.faults)).slice(0, MOST_FAULTS),
  );
}

function decodeOne(value: unknown, pointer: string): DecodedStroke {
  try {
    return { stroke: decodeStroke(value, pointer) };
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    return { stroke: null, key: keyOf(value), error };
  }
}
