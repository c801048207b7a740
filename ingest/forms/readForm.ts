import { decodeCbor, readCbor } from '../cbor/decodeCbor.ts';
import { strokesOfCsv } from '../csv/strokesOfTable.ts';
import { textOfTable } from '../csv/textOfTable.ts';
import { DecodeError } from '../decodeError.ts';
import { elementsOf } from '../json/elements.ts';
import { setFaultyAside } from '../json/partlyRead.ts';
import { checkJsonShape, MOST_DEPTH_OF_STROKES } from '../json/shape.ts';
import { UnparsedStroke } from '../json/unparsedStroke.ts';
import { MAX_NESTS } from '../limits.ts';
import { senmlFieldOf } from '../senml/labels.ts';
import { MOST_RECORDS } from '../senml/resolve.ts';
import { strokeOfPack } from '../senml/strokeOfPack.ts';
import type { SentForm, SentQuery } from './sentForm.ts';

/** The media types besides JSON that strokes may be sent in. */
export const FORMS = [
  'application/cbor',
  'application/senml+json',
  'application/senml+cbor',
  'text/csv',
] as const;
export type FormType = (typeof FORMS)[number];

/**
 * Reads a body of another form than JSON. `nowMs` is what relative times of SenML are relative to. Throws
 * `DecodeError` where not one stroke can be read.
 */
export function readForm(type: FormType, bytes: Uint8Array, query: SentQuery, nowMs: number): SentForm {
  switch (type) {
    case 'application/cbor':
      return { strokes: strokesOfCbor(bytes), placeOf: null };
    case 'application/senml+json':
      return strokeOfPack(parseJson(bytes, MOST_RECORDS + 1), query, nowMs);
    case 'application/senml+cbor':
      return strokeOfPack(decodeCbor(bytes, 'text or label', senmlFieldOf), query, nowMs);
    case 'text/csv':
      return strokesOfCsv(textOfTable(bytes), query);
  }
}

function strokesOfCbor(bytes: Uint8Array): unknown {
  const { value, faults } = readCbor(bytes);
  return setFaultyAside(value, faults);
}

/** Throws `DecodeError` where the bytes are not UTF-8: a picture or a program is none. */
export function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw DecodeError.at('', 'The body is not UTF-8.');
  }
}

/** Of a smaller body the whole is parsed sooner, and takes little memory. */
const PARSED_WHOLE_BYTES = 4 * 1024 * 1024;

/**
 * Parses the body of a request that sends strokes, or leaves each stroke of a large one to be parsed when it is its
 * turn: the text and the objects of all of them together take three times the bytes of the body. Throws `DecodeError`.
 */
export function parseStrokes(bytes: Uint8Array): unknown {
  if (bytes.length <= PARSED_WHOLE_BYTES) return parseJson(bytes);
  checkJsonShape(bytes, MAX_NESTS, MOST_DEPTH_OF_STROKES);
  const parse = () => parseJson(bytes);
  return elementsOf(bytes)?.map((stroke) => new UnparsedStroke(stroke, parse)) ?? parse();
}

/** Throws `DecodeError` where the bytes are no JSON in UTF-8, or have more objects and arrays than there may be. */
export function parseJson(bytes: Uint8Array, mostNests = MAX_NESTS): unknown {
  const text = textOf(bytes);
  checkJsonShape(bytes, mostNests, MOST_DEPTH_OF_STROKES);
  try {
    return JSON.parse(text);
  } catch (error) {
    throw DecodeError.at(
      '',
      `The body is not JSON: ${error instanceof Error ? error.message.slice(0, 200) : ''}`,
    );
  }
}
