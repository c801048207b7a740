import { expect, test } from 'vitest';
import { decodeCbor } from '../../ingest/cbor/decodeCbor.ts';
import { senmlFieldOf } from '../../ingest/senml/labels.ts';
import { absoluteTime, isSenmlName, resolvePack } from '../../ingest/senml/resolve.ts';
import { near } from './values/near.ts';
import { published, publishedCase } from './values/read.ts';

interface Pack {
  readonly pack: object[];
  readonly now?: number;
}
interface Resolved {
  readonly n: string;
  readonly u?: string;
  readonly t: number;
  readonly v?: number;
  readonly vs?: string;
  readonly vb?: boolean;
  readonly vd?: string;
  readonly s?: number;
}

const packs = published<Pack, { resolved: Resolved[] }>(
  'rfc8428-senml',
  (id) => id.startsWith('rfc-example') || id === 'base-value-and-sum',
);

test.each(packs)('RFC 8428, $id', ({ inputs, expected }) => {
  const nowS = inputs.now ?? 1_500_000_000;
  const resolved = resolvePack(inputs.pack)
    .map((record) => ({ record, time: absoluteTime(record, nowS) }))
    .sort((a, b) => a.time - b.time);
  expect(resolved).toHaveLength(expected.resolved.length);
  for (const [i, { record, time }] of resolved.entries()) {
    const { n, u, t, v, vs, vb, vd, s } = expected.resolved[i];
    expect(record.name).toBe(n);
    expect(record.unit).toBe(u ?? null);
    expect(Math.abs(time - t)).toBeLessThanOrEqual(1e-6);
    if (v === undefined) expect(record.value).toBeNull();
    else near(record.value ?? Number.NaN, v, 1e-12);
    expect([record.text, record.flag, record.octets]).toEqual([vs ?? null, vb ?? null, vd]);
    expect(record.sum).toBe(s ?? null);
  }
});

test('RFC 8428, section 6: the dump of the example in CBOR', () => {
  const { inputs, expected } = publishedCase<
    { hex: string },
    { decoded: object[]; labels: Record<string, string> }
  >('rfc8428-senml', 'cbor-of-example-3');
  expect(decodeCbor(Buffer.from(inputs.hex, 'hex'), 'text or label', senmlFieldOf)).toEqual(expected.decoded);
  for (const [label, name] of Object.entries(expected.labels)) expect(senmlFieldOf(Number(label))).toBe(name);
});

test('RFC 8428, section 4.5.3: relative and absolute times', () => {
  const { inputs, expected } = publishedCase<{ now: number }, { rows: [number, number, number][] }>(
    'rfc8428-senml',
    'time-rules',
  );
  for (const [baseTime, time, absolute] of expected.rows) {
    expect(absoluteTime({ baseTime, time }, inputs.now)).toBe(absolute);
  }
});

test('RFC 8428, section 4.5.1: names', () => {
  const { inputs, expected } = publishedCase<{ names: string[] }, { valid: boolean[] }>(
    'rfc8428-senml',
    'name-rules',
  );
  expect(inputs.names.map(isSenmlName)).toEqual(expected.valid);
});
