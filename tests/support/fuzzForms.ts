import assert from 'node:assert/strict';
import { encode } from 'cbor2';
import fc from 'fast-check';
import { DecodeError } from '../../ingest/decodeError.ts';
import { type FormType, readForm } from '../../ingest/forms/readForm.ts';
import { decodeStrokes } from '../../ingest/json/strokes.ts';

const QUERY = { roomId: 'room', key: 'key', startedAt: '2026-05-02T16:20:11Z' };

/** The same for JSON, which the route has parsed before. */
function survivesAsJson(bytes: Uint8Array): void {
  let body: unknown;
  try {
    body = JSON.parse(Buffer.from(bytes).toString());
  } catch {
    // No JSON at all: refused before any decoder is asked.
    return;
  }
  try {
    decodeStrokes(body);
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    assert(error.faults.length > 0, 'A refusal says why.');
  }
}

/** Reads it as the route does: strokes, or a `DecodeError` with a place; anything else thrown is a crash. */
function survives(type: FormType, bytes: Uint8Array, query: object = QUERY): void {
  let faults: DecodeError['faults'] = [];
  try {
    const { strokes, placeOf } = readForm(type, bytes, query, 1.7e12);
    try {
      for (const one of decodeStrokes(strokes)) if (one.stroke === null) faults = one.error.faults;
    } catch (error) {
      if (!(error instanceof DecodeError)) throw error;
      faults = error.faults;
    }
    faults = faults.map((fault) => ({ ...fault, ...placeOf?.(fault.pointer) }));
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    faults = error.faults;
    assert(faults.length > 0, 'A refusal says why.');
  }
  for (const { pointer } of faults) assert.match(pointer, /^(?:\/[^/]*)*$/);
}

const anything = fc.anything({
  withNullPrototype: false,
  withBigInt: true,
  withTypedArray: true,
  maxDepth: 3,
});
const number = fc.oneof(fc.double(), fc.integer(), fc.constantFrom(null, undefined, '1', true, [], {}));
const numbers = fc.oneof(
  fc.array(number, { maxLength: 8 }),
  fc.int16Array({ maxLength: 8 }),
  fc.float64Array({ maxLength: 8 }),
  fc.bigUint64Array({ maxLength: 4 }),
  fc.uint8Array({ maxLength: 8 }),
);
const side = fc.record(
  {
    side: fc.constantFrom<unknown>('front', 'rear', 3, null),
    rateHz: number,
    t: numbers,
    amps: numbers,
    milliamps: numbers,
    counts: numbers,
    ampsPerCount: number,
  },
  { requiredKeys: [] },
);
const stroke = fc.record(
  {
    key: fc.oneof(fc.string({ unit: 'binary' }), anything),
    roomId: fc.oneof(fc.uuid(), anything),
    direction: fc.constantFrom<unknown>('extend', 'retract', 'up', 7),
    startedAt: fc.oneof(fc.constant('2026-05-02T16:20:11Z'), fc.string(), number),
    sides: fc.oneof(fc.array(side, { maxLength: 3 }), anything),
    supply: fc.record({ rateHz: number, volts: numbers }, { requiredKeys: [] }),
    ambientC: number,
  },
  { requiredKeys: [] },
);

/** Bytes of a sound body with some of them changed, or cut short: what a bad link makes of it. */
const damaged = (sound: fc.Arbitrary<Uint8Array>) =>
  fc
    .tuple(sound, fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 4 }), fc.nat(), fc.boolean())
    .map(([bytes, changes, end, cut]) => {
      const copy = Uint8Array.from(bytes);
      for (const [at, value] of changes) if (copy.length > 0) copy[at % copy.length] = value;
      return cut ? copy.subarray(0, end % (copy.length + 1)) : copy;
    });

const encoded = (value: fc.Arbitrary<unknown>) =>
  value.map((one) => {
    try {
      return Uint8Array.from(encode(one));
    } catch {
      // Half a surrogate pair has no encoding; what such bytes do is for the other cases.
      return Uint8Array.of(0xf6);
    }
  });

const record = fc.record(
  {
    bn: fc.constantFrom<unknown>('dev:', '0190a1b2-c3d4-7e5f-8a9b-0c1d2e3f4a5b/7/', '', 4),
    bt: number,
    bu: fc.constantFrom<unknown>('A', 'V', 'W', 1),
    bv: number,
    n: fc.constantFrom<unknown>('front', 'rear', 'direction', 'a b', '', 2),
    u: fc.constantFrom<unknown>('A', 'mA', 'V', 'Cel', 'K'),
    v: number,
    vs: fc.constantFrom<unknown>('extend', 'x', 1),
    t: number,
    s: number,
    x_: fc.constant(1),
  },
  { requiredKeys: [] },
);
const pack = fc.oneof(
  fc.array(record, { maxLength: 8 }),
  fc.array(fc.oneof(record, anything), { maxLength: 4 }),
);
const asJson = pack.map((one) =>
  Buffer.from(JSON.stringify(one, (_, value) => (typeof value === 'bigint' ? String(value) : value)) ?? ''),
);

const cell = fc.oneof(
  fc.double().map(String),
  fc.double({ min: -50, max: 50 }).map((n) => n.toFixed(2).replace('.', ',')),
  fc.constantFrom(
    '',
    '"',
    '""',
    '"1,5"',
    '16:20:11',
    '24:61:00',
    '2026-05-02T16:20:11Z',
    '-',
    'x',
    '=1',
    '\0',
  ),
  fc.string({ unit: 'binary', maxLength: 6 }),
);
const title = fc.oneof(
  fc.constantFrom(
    't',
    'time ms',
    'front A',
    'rear (mA)',
    'amps',
    'supply V',
    'ambient C',
    '#',
    '__proto__',
    '(([',
  ),
  fc.string({ unit: 'binary', maxLength: 12 }),
);
const table = fc
  .tuple(
    fc.array(title, { maxLength: 4 }),
    fc.array(fc.array(cell, { maxLength: 4 }), { maxLength: 8 }),
    fc.constantFrom(',', ';', '\t'),
    fc.constantFrom('\r\n', '\n', '\r'),
  )
  .map(([titles, rows, delimiter, end]) =>
    Buffer.from([titles, ...rows].map((cells) => cells.join(delimiter)).join(end)),
  );
const csvQuery = fc.record(
  {
    roomId: fc.string(),
    key: fc.string({ unit: 'binary' }),
    startedAt: fc.constantFrom(
      '2026-05-02T16:20:11Z',
      '2026-05-02T16:20:11 02:00',
      'x',
      '9999-12-31T23:59:59Z',
    ),
    direction: fc.constantFrom('extend', 'extend,retract', '', ',,'),
    rateHz: fc.constantFrom('50', '0', '1e9', '-1', '0,5'),
    side: fc.string(),
  },
  { requiredKeys: [] },
);

const bytes = fc.uint8Array({ maxLength: 200 });

const strokes = fc.oneof(stroke, fc.array(stroke, { maxLength: 3 }), anything);
const cborStrokes = encoded(strokes);
const cborPack = encoded(pack);
const asJsonStrokes = strokes.map((one) =>
  Buffer.from(JSON.stringify(one, (_, value) => (typeof value === 'bigint' ? String(value) : value)) ?? ''),
);

/** What each decoder must live through: so many inputs, from sound ones to noise. Throws with the one that it did not. */
export const FUZZES: Readonly<Record<string, (numRuns: number) => void>> = {
  JSON: (numRuns) =>
    fc.assert(fc.property(fc.oneof(asJsonStrokes, damaged(asJsonStrokes), bytes), survivesAsJson), {
      numRuns,
    }),
  CBOR: (numRuns) =>
    fc.assert(
      fc.property(fc.oneof(bytes, cborStrokes, damaged(cborStrokes)), (body) =>
        survives('application/cbor', body),
      ),
      { numRuns },
    ),
  'SenML in JSON': (numRuns) =>
    fc.assert(
      fc.property(fc.oneof(asJson, damaged(asJson), bytes), (body) =>
        survives('application/senml+json', body),
      ),
      { numRuns },
    ),
  'SenML in CBOR': (numRuns) =>
    fc.assert(
      fc.property(fc.oneof(cborPack, damaged(cborPack), bytes), (body) =>
        survives('application/senml+cbor', body),
      ),
      { numRuns },
    ),
  CSV: (numRuns) =>
    fc.assert(
      fc.property(fc.oneof(table, damaged(table), bytes), csvQuery, (body, query) =>
        survives('text/csv', body, query),
      ),
      { numRuns },
    ),
};
