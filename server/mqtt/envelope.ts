import { encode } from 'cbor2/encoder';
import { readCbor } from '../../ingest/cbor/decodeCbor.ts';
import { DecodeError, type FieldFault } from '../../ingest/decodeError.ts';
import { isObject, type JsonObject, own } from '../../ingest/json/faults.ts';
import { setFaultyAside } from '../../ingest/json/partlyRead.ts';
import { checkJsonShape, MOST_DEPTH_OF_STROKES } from '../../ingest/json/shape.ts';
import { MAX_NESTS } from '../../ingest/limits.ts';
import { invalidField, ProblemError } from '../problems.ts';
import { LARGE_BODY_BYTES } from '../requests/requestBodies.ts';

/** What a message on `slideload/<loggerId>/strokes` holds. */
export interface Envelope {
  /** Null: there is none, and the broker must vouch for the topic. */
  readonly token: string | null;
  /** The body of `POST /api/v1/strokes`; undefined where it was forgotten. */
  readonly strokes: unknown;
  /** The sender's own, given back with the results. */
  readonly id: string | number | null;
}

type Form = 'json' | 'cbor';

const LONGEST_ID = 200;
/** In CBOR maps and arrays begin with a byte from 0x80 on, which no JSON text in UTF-8 does. */
const FIRST_OF_CBOR = 0x80;

/** JSON and CBOR tell themselves apart by their first byte. */
export function formOf(payload: Uint8Array): Form {
  return (payload[0] ?? 0) >= FIRST_OF_CBOR ? 'cbor' : 'json';
}

/**
 * Reads `{"token", "strokes", "id"?}`, or the strokes by themselves where they come without a token. Throws the
 * problem of what is neither.
 */
export function readEnvelope(payload: Buffer): Envelope {
  if (payload.length > LARGE_BODY_BYTES)
    throw new ProblemError('body-too-large', `A message may have ${LARGE_BODY_BYTES} bytes.`);
  const body = formOf(payload) === 'cbor' ? parseCbor(payload) : parse(payload);
  if (!isEnvelope(body)) return { token: null, strokes: body, id: null };
  const token = own(body, 'token') ?? null;
  const id = own(body, 'id') ?? null;
  if (token !== null && typeof token !== 'string') throw invalidField('/token', 'Must be a token.');
  const sound = id === null || typeof id === 'number' || (typeof id === 'string' && id.length <= LONGEST_ID);
  if (!sound) throw invalidField('/id', `Must be a number, or a text of at most ${LONGEST_ID} characters.`);
  return { token, strokes: own(body, 'strokes'), id };
}

/** What names a token is no stroke, also where the strokes were forgotten. */
function isEnvelope(body: unknown): body is JsonObject {
  return isObject(body) && (own(body, 'strokes') !== undefined || own(body, 'token') !== undefined);
}

export function writeResult(result: object, form: Form): Buffer {
  return Buffer.from(form === 'cbor' ? encode(result) : JSON.stringify(result));
}

function parse(payload: Buffer): unknown {
  checkJsonShape(payload, MAX_NESTS, MOST_DEPTH_OF_STROKES);
  try {
    return JSON.parse(payload.toString('utf8'));
  } catch (cause) {
    throw new ProblemError('malformed-request', 'The message is neither JSON nor CBOR.', { cause });
  }
}

function parseCbor(payload: Buffer): unknown {
  try {
    const { value, faults } = readCbor(payload);
    if (!isEnvelope(value)) return setFaultyAside(value, faults);
    return { ...value, strokes: setFaultyAside(value.strokes, faultsOfStrokes(faults)) };
  } catch (cause) {
    if (!(cause instanceof DecodeError)) throw cause;
    throw new ProblemError('malformed-request', cause.message, { errors: cause.faults, cause });
  }
}

/** Their pointers led from the envelope to the strokes in it. One of the envelope itself is of the whole message. */
function faultsOfStrokes(faults: readonly FieldFault[]): readonly FieldFault[] {
  const within = '/strokes/';
  const ofEnvelope = faults.filter(({ pointer }) => !pointer.startsWith(within));
  if (ofEnvelope.length > 0) throw new DecodeError(ofEnvelope);
  return faults.map(({ pointer, detail }) => ({ pointer: pointer.slice(within.length - 1), detail }));
}
