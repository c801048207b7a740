import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { DecodeError } from '../../ingest/decodeError.ts';
import { FORMS, type FormType, readForm } from '../../ingest/forms/readForm.ts';
import type { Place, SentForm, SentQuery } from '../../ingest/forms/sentForm.ts';
import type { App } from '../appTypes.ts';
import { type FieldFault, ProblemError } from '../problems.ts';
import type { StrokeOutcome } from '../schemas/stroke.ts';

type Outcome = z.infer<typeof StrokeOutcome>;

/** What JSON and CBOR say within the stroke, and CSV and SenML here. `ingest` checks the values. */
export const SentStrokesQuery = z.object({
  roomId: z.string().optional().describe('CSV and SenML: the room.'),
  key: z
    .string()
    .optional()
    .describe("CSV and SenML: the sender's own key; several strokes get key#1, key#2, ..."),
  startedAt: z.string().optional().describe('CSV and SenML: the time of the first sample (RFC 3339).'),
  direction: z
    .string()
    .optional()
    .describe('CSV and SenML: extend or retract; for several strokes also one for each, with commas.'),
  rateHz: z.string().optional().describe('CSV without a column of times, or whose times are not to be used.'),
  side: z
    .string()
    .optional()
    .describe('CSV: the side that a column names which says only its unit; main unless said.'),
  columns: z
    .string()
    .optional()
    .describe(
      'CSV: what each column is, in order, whatever its title says, with commas: time/s, time/ms, side/NAME/A, ' +
        'side/NAME/mA, supply/V, ambient/C, none.',
    ),
}) satisfies z.ZodType<SentQuery>;

/** A body as it came, to be read once the query is known to be sound. */
export class RawForm {
  readonly type: FormType;
  readonly bytes: Buffer;
  readonly #query: unknown;

  constructor(type: FormType, bytes: Buffer, query: unknown) {
    this.type = type;
    this.bytes = bytes;
    this.#query = query;
  }

  /** What makes two requests the same, for the Idempotency-Key. */
  toJSON(): unknown {
    return [this.type, this.#query, createHash('sha256').update(this.bytes).digest('base64')];
  }
}

const OTHER_CHARSET = /;\s*charset\s*=\s*"?(?!utf-?8\b|us-ascii\b)[^";]/i;

/** Lets the routes of this scope take the other forms of a stroke besides JSON. */
export function takeForms(app: App): void {
  for (const type of FORMS) {
    app.addContentTypeParser(type, async (request: FastifyRequest, payload: Readable) => {
      if (OTHER_CHARSET.test(request.headers['content-type'] ?? '')) {
        throw new ProblemError('unsupported-media-type', 'Text is taken in UTF-8 only.');
      }
      return new RawForm(type, await app.readBody(request, payload), request.query);
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
  send: (strokes: unknown) => Promise<Outcome[]>,
): Promise<Outcome[]> {
  if (!(body instanceof RawForm)) return send(body);
  const form = read(body, query);
  try {
    return (await send(form.strokes)).map((outcome) => withPlaces(outcome, form.placeOf));
  } catch (error) {
    if (!(error instanceof ProblemError) || error.errors.length === 0) throw error;
    const errors = error.errors.map((fault) => placed(fault, form.placeOf));
    throw new ProblemError(error.problem, errors[0].detail, { errors, cause: error });
  }
}

function read({ type, bytes }: RawForm, query: SentQuery): SentForm {
  try {
    return readForm(type, bytes, query, Date.now());
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    throw new ProblemError('invalid-field', error.message, { errors: error.faults, cause: error });
  }
}

function withPlaces(outcome: Outcome, placeOf: SentForm['placeOf']): Outcome {
  if (outcome.problem?.errors === undefined) return outcome;
  const errors = outcome.problem.errors.map((fault) => placed(fault, placeOf));
  return { ...outcome, problem: { ...outcome.problem, detail: errors[0].detail, errors } };
}

function placed({ pointer, detail }: FieldFault, placeOf: (pointer: string) => Place): FieldFault {
  const place = placeOf(pointer);
  return { pointer: place.pointer, detail: (place.said ?? '') + detail };
}
