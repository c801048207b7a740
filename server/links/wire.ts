import { encode } from 'cbor2/encoder';
import { decodeCbor } from '../../ingest/cbor/decodeCbor.ts';
import { DecodeError } from '../../ingest/decodeError.ts';
import { isObject, type JsonObject } from '../../ingest/json/faults.ts';
import { checkJsonShape } from '../../ingest/json/shape.ts';
import { ProblemError } from '../problems.ts';
import type { LinkAnswer } from '../schemas/strokesLive.ts';

/** A message is answered in the form that it came in: text frames hold JSON, binary frames CBOR. */
export type Form = 'json' | 'cbor';

/** Reads one message. Throws the problem of one that is none. */
export function readMessage(bytes: Buffer, form: Form): JsonObject {
  const message = form === 'json' ? readJson(bytes) : readCbor(bytes);
  if (isObject(message)) return message;
  throw new ProblemError('invalid-field', 'A message must be an object.', {
    errors: [{ pointer: '', detail: 'Must be an object.' }],
  });
}

export function writeAnswer(answer: LinkAnswer, form: Form): string | Uint8Array {
  return form === 'json' ? JSON.stringify(answer) : encode(answer);
}

function readJson(bytes: Buffer): unknown {
  checkJsonShape(bytes);
  try {
    return JSON.parse(bytes.toString('utf8'));
  } catch (cause) {
    throw new ProblemError('malformed-request', 'The message is not JSON.', { cause });
  }
}

function readCbor(bytes: Buffer): unknown {
  try {
    return decodeCbor(bytes);
  } catch (cause) {
    if (!(cause instanceof DecodeError)) throw cause;
    throw new ProblemError('malformed-request', cause.message, { errors: cause.faults, cause });
  }
}
