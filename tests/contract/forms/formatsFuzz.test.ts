import { encode } from 'cbor2';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests } from '../strokes/strokeFixture.ts';
import { countStrokes, sendAs } from './formatsFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

/** Over HTTP fewer than the 2,000 that each decoder is given by itself in tests/unit/ingest/fuzzForms.test.ts. */
const RUNS = 60;
/** Inputs to a run, sent at once. */
const AT_ONCE = 4;
const QUERY_KEY = 'fuzz';

/** A sound body of each form: what is sent is these with some bytes changed, cut out or cut off. */
function soundBodies(): Record<string, Buffer> {
  const amps = new Int16Array([20, 14_800, 9100]);
  const stroke = { key: 'k', roomId: fleet.roomId, startedAt: '2026-05-02T16:20:11Z' };
  const sides = [{ side: 'front', rateHz: 50, milliamps: amps }];
  const pack = [
    { bn: `${fleet.roomId}/k/`, bt: 1_777_738_811, bu: 'A', n: 'front', v: 0.02 },
    { n: 'front', t: 0.02, v: 14.8 },
    { n: 'supply', u: 'V', v: 12.9 },
  ];
  return {
    'application/cbor': Buffer.from(
      encode([
        { ...stroke, sides },
        { ...stroke, key: 'l', sides },
      ]),
    ),
    'application/senml+json': Buffer.from(JSON.stringify(pack)),
    'application/senml+cbor': Buffer.from(encode(pack)),
    'text/csv': Buffer.from(
      't,front A,rear mA,supply V\r\n0,0.02,10,12.9\r\n0.02,"14,8",14500,\r\n0.04,9.1,,12\r\n',
    ),
  };
}

const change = fc.record({
  at: fc.nat(),
  drop: fc.constantFrom(0, 0, 1, 1, 5),
  insert: fc.uint8Array({ maxLength: 3 }),
});

interface Change {
  readonly at: number;
  readonly drop: number;
  readonly insert: Uint8Array;
}

function changed(sound: Buffer, changes: readonly Change[]): Buffer {
  let body = sound;
  for (const { at, drop, insert } of changes) {
    const from = at % (body.length + 1);
    body = Buffer.concat([body.subarray(0, from), insert, body.subarray(from + drop)]);
  }
  return body;
}

test.each(['application/cbor', 'application/senml+json', 'application/senml+cbor', 'text/csv'])(
  'whatever becomes of %s on the way, it is stored whole or refused clearly',
  async (type) => {
    const sound = soundBodies()[type];
    let stored = await countStrokes(service);
    const send = async (changes: readonly Change[]): Promise<number> => {
      const query = { roomId: fleet.roomId, key: QUERY_KEY, startedAt: '2026-05-02T16:20:11Z' };
      const answer = await sendAs(service, fleet, type, changed(sound, changes), query);
      expect([200, 422], answer.text.slice(0, 300)).toContain(answer.status);
      if (answer.status === 422) expect(answer.body.errors[0].pointer).toEqual(expect.any(String));
      const results: { outcome: string }[] = answer.body.results ?? [];
      return results.filter(({ outcome }) => outcome === 'stored').length;
    };
    const bodies = fc.array(fc.array(change, { minLength: 1, maxLength: 3 }), {
      minLength: AT_ONCE,
      maxLength: AT_ONCE,
    });
    const property = fc.asyncProperty(bodies, async (all) => {
      for (const count of await Promise.all(all.map(send))) stored += count;
    });
    await fc.assert(property, { numRuns: RUNS });
    expect(await countStrokes(service)).toBe(stored);
    const { rows } = await service.pool.query(
      'select count(*)::integer as n from strokes s where not exists (select from traces t where t.stroke_id = s.id)',
    );
    expect(rows[0].n).toBe(0);
  },
);
