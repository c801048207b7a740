import { gzipSync } from 'node:zlib';
import { encode } from 'cbor2';
import { ampsOf, type OutgoingStroke } from './outgoingStroke.ts';

export type BodyForm = 'json' | 'cbor';

/** The body of a request and its headers. JSON goes compressed; CBOR holds the numbers as typed arrays (RFC 8746). */
export function bodyOf(
  strokes: readonly OutgoingStroke[],
  form: BodyForm,
): { headers: Record<string, string>; body: Uint8Array<ArrayBuffer> } {
  if (form === 'json') {
    const headers = { 'content-type': 'application/json', 'content-encoding': 'gzip' };
    return { headers, body: Uint8Array.from(gzipSync(JSON.stringify(strokes))) };
  }
  return {
    headers: { 'content-type': 'application/cbor' },
    body: Uint8Array.from(encode(strokes.map(withTypedArrays))),
  };
}

function withTypedArrays(stroke: OutgoingStroke): object {
  const sides = stroke.sides.map(({ milliamps: _milliamps, ...side }) => ({
    ...side,
    amps: doubles(ampsOf({ ...side, milliamps: _milliamps })),
    ...(side.t === undefined ? {} : { t: doubles(side.t) }),
  }));
  const supply = stroke.supply && { ...stroke.supply, volts: doubles(stroke.supply.volts) };
  return { ...stroke, sides, ...(supply === undefined ? {} : { supply }) };
}

function doubles(numbers: readonly (number | null)[]): Float64Array {
  return Float64Array.from(numbers, (number) => number ?? Number.NaN);
}
