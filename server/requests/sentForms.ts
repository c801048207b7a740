import type { Readable } from 'node:stream';
import type { FastifyRequest } from 'fastify';
import { DecodeError, type FieldFault } from '../../ingest/decodeError.ts';
import { FORMS, type FormType, parseStrokes, readForm } from '../../ingest/forms/readForm.ts';
import type { PlaceOf, SentQuery } from '../../ingest/forms/sentForm.ts';
import type { App } from '../appTypes.ts';
import { ProblemError } from '../problems.ts';
import type { StrokeOutcome } from '../schemas/stroke.ts';

/** A body as it came, to be read once the query is known to be sound. */
class RawForm {
  readonly type: FormType;
  readonly bytes: Buffer;

  constructor(type: FormType, bytes: Buffer) {
    this.type = type;
    this.bytes = bytes;
  }
}

/** Whose titles are held against the sides of the room. */
export function isCsv(body: unknown): boolean {
  return body instanceof RawForm && body.type === 'text/csv';
}

/** To these a character set says nothing: they name none (RFC 8949, section 9.5; RFC 8428, section 12.3.2). */
const IS_BINARY = /cbor$/;
const OTHER_CHARSET = /;\s*charset\s*=\s*"?(?!utf-?8\b|us-ascii\b)[^";]/i;

/**
 * Lets the routes of this scope take strokes in every form. A body in which none can be read is 422, whatever is wrong
 * with it; what only one stroke of several has too much, as a `__proto__`, is left to the decoder of that one.
 */
export function takeForms(app: App): void {
  app.removeContentTypeParser('application/json');
  app.addContentTypeParser('application/json', async (request: FastifyRequest, payload: Readable) => {
    const bytes = await bytesOf(app, request, payload);
    return bytes.length === 0 ? undefined : parseStrokes(bytes);
  });
  for (const type of FORMS) {
    app.addContentTypeParser(type, async (request: FastifyRequest, payload: Readable) => {
      if (!IS_BINARY.test(type) && OTHER_CHARSET.test(request.headers['content-type'] ?? '')) {
        throw new ProblemError('unsupported-media-type', 'Text is taken in UTF-8 only.');
      }
      return new RawForm(type, await bytesOf(app, request, payload));
    });
  }
}

async function bytesOf(app: App, request: FastifyRequest, payload: Readable): Promise<Buffer> {
  try {
    return await app.readBody(request, payload);
  } catch (error) {
    if (!(error instanceof ProblemError) || error.problem !== 'malformed-request') throw error;
    throw new ProblemError('invalid-field', error.message, {
      errors: [{ pointer: '', detail: error.message }],
      cause: error,
    });
  }
}

/**
 * Sends the strokes of a body in whatever form: `send` takes what JSON is parsed into. Faults that it finds are led
 * back to where they are in the body that came.
 */
export async function sendForm(
  body: unknown,
  query: SentQuery,
  send: (strokes: unknown) => Promise<StrokeOutcome[]>,
): Promise<StrokeOutcome[]> {
  if (!(body instanceof RawForm)) return send(body);
  const { strokes, placeOf } = readForm(body.type, body.bytes, query, Date.now());
  if (placeOf === null) return send(strokes);
  const several = Array.isArray(strokes);
  try {
    const outcomes = await send(strokes);
    return outcomes.map((outcome, i) =>
      withPlaces(outcome, (pointer) => placeOf(several ? `/${i}${pointer}` : pointer)),
    );
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    throw new DecodeError(
      error.faults.map((fault) => placed(fault, placeOf)),
      { cause: error },
    );
  }
}

function withPlaces(outcome: StrokeOutcome, placeOf: PlaceOf): StrokeOutcome {
  if (outcome.problem?.errors === undefined) return outcome;
  const errors = outcome.problem.errors.map((fault) => placed(fault, placeOf));
  return { ...outcome, problem: { ...outcome.problem, detail: errors[0].detail, errors } };
}

function placed({ pointer, detail }: FieldFault, placeOf: PlaceOf): FieldFault {
  const place = placeOf(pointer);
  return { pointer: place.pointer, detail: (place.said ?? '') + detail };
}
