import { encode } from 'cbor2';
import { randomNumbers, syntheticStroke } from './syntheticStroke.ts';

type Stroke = ReturnType<typeof syntheticStroke>;

export const JSON_TYPE = { 'content-type': 'application/json' };
export const CBOR_TYPE = { 'content-type': 'application/cbor' };

/** New strokes without end, of one room after the other, in the forms in which they are sent. */
export function strokeSource(rooms: readonly string[]) {
  const random = randomNumbers(11);
  let number = 0;
  const strokes = (count: number): Stroke[] =>
    Array.from({ length: count }, () => syntheticStroke(rooms[number % rooms.length], number++, random));
  return {
    /** One stroke a body, amperes as decimals. */
    json: (count: number) => strokes(count).map((stroke) => Buffer.from(JSON.stringify(stroke))),
    /** One stroke a body, the samples of each side as one typed array of whole milliamperes. */
    cbor: (count: number) => strokes(count).map((stroke) => Buffer.from(encode(inCounts(stroke)))),
    /** So many strokes a body. */
    batches: (count: number, size: number) =>
      Array.from({ length: count / size }, () => Buffer.from(JSON.stringify(strokes(size)))),
  };
}

function inCounts({ sides, ...stroke }: Stroke) {
  return {
    ...stroke,
    sides: sides.map(({ amps, ...side }) => ({
      ...side,
      ampsPerCount: 0.001,
      counts: Int16Array.from(amps, (value) => Math.round(1000 * value)),
    })),
  };
}
