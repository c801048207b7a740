import { randomUUID } from 'node:crypto';
import { encode } from 'cbor2';
import { describe, expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests } from '../strokes/strokeFixture.ts';
import { countStrokes, sendAs, strokeOf, traceOf } from './formatsFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

const JSON_PACK = 'application/senml+json';
const send = (pack: unknown, query: Record<string, string> = {}) =>
  sendAs(service, fleet, JSON_PACK, JSON.stringify(pack), query);

async function stored(answer: Awaited<ReturnType<typeof send>>) {
  expect(answer.body, answer.text).toMatchObject({ results: [{ outcome: 'stored' }] });
  const [{ key, strokeId }] = answer.body.results;
  return {
    key,
    stroke: await strokeOf(service, fleet, strokeId),
    trace: await traceOf(service, fleet, strokeId),
  };
}

/** 2026-05-02T16:20:11Z */
const START = Date.UTC(2026, 4, 2, 16, 20, 11) / 1000;
const front = [
  { bt: START, bu: 'A', n: 'front', v: 0.02 },
  { n: 'front', t: 0.02, v: 14.8 },
  { n: 'front', t: 0.04, v: 9.1 },
];

describe('a SenML pack is a stroke', () => {
  test('its names say room, key and side; volts are the supply, degrees the ambient temperature', async () => {
    const pack = [
      { bn: `${fleet.roomId}/stroke-17/`, ...front[0] },
      ...front.slice(1),
      { n: 'rear', t: 0.01, u: 'mA', v: 14_500 },
      { n: 'rear', t: 0.03, u: 'mA', v: 9300 },
      { n: 'battery', u: 'V', v: 12.9 },
      { n: 'step', u: 'Cel', v: 18.5 },
      { n: 'direction', vs: 'retract' },
    ];
    const { key, stroke, trace } = await stored(await send(pack));
    expect(key).toBe('stroke-17');
    expect(stroke).toMatchObject({
      roomId: fleet.roomId,
      startedAt: '2026-05-02T16:20:11.000Z',
      direction: 'retract',
      ambientC: 18.5,
    });
    expect(trace).toEqual({
      sides: [
        { side: 'front', t: [0, 0.02, 0.04], amps: [0.02, 14.8, 9.1] },
        { side: 'rear', t: [0.01, 0.03], amps: [14.5, 9.3] },
      ],
      supply: { t: [0], volts: [12.9] },
      ambientC: 18.5,
    });
  });

  test('the query says what the names do not', async () => {
    const query = { roomId: fleet.roomId, key: randomUUID(), direction: 'extend' };
    const unique = front.map((record, i) =>
      i === 0 ? { bn: 'urn:dev:mac:0024befffe804ff1:', ...record } : record,
    );
    const { key, stroke } = await stored(await send(unique, query));
    expect([key, stroke.direction]).toEqual([query.key, 'extend']);
  });

  test('the same pack in CBOR is the same stroke', async () => {
    const query = { roomId: fleet.roomId, key: randomUUID() };
    const labels: Record<string, number> = { bt: -3, bu: -4, n: 0, v: 2, t: 6 };
    const asLabels = front.map(
      (record) => new Map(Object.entries(record).map(([name, v]) => [labels[name], v])),
    );
    const first = await sendAs(service, fleet, 'application/senml+cbor', encode(asLabels), query);
    const { trace } = await stored(first);
    expect(trace.sides).toEqual([{ side: 'front', t: [0, 0.02, 0.04], amps: [0.02, 14.8, 9.1] }]);
    expect((await send(front, query)).body.results[0].outcome).toBe('duplicate');
  });

  test('times relative to now are placed now', async () => {
    const pack = [-2, -1, 0].map((t) => ({ n: 'front', u: 'A', t, v: 3 - t }));
    const { stroke, trace } = await stored(await send(pack, { roomId: fleet.roomId, key: randomUUID() }));
    expect(Math.abs(Date.parse(stroke.startedAt) - (Date.now() - 2000))).toBeLessThan(60_000);
    expect(trace.sides).toEqual([{ side: 'front', t: [0, 1, 2], amps: [5, 4, 3] }]);
  });

  test('records may come out of order, values have their base', async () => {
    const pack = [
      { bt: START, bu: 'A', bv: 10, n: 'front', t: 2, v: -1 },
      { n: 'front', t: 1 },
      { n: 'front', t: 0, v: 2.5 },
    ];
    const { trace } = await stored(await send(pack, { roomId: fleet.roomId, key: randomUUID() }));
    expect(trace.sides).toEqual([{ side: 'front', t: [0, 1, 2], amps: [12.5, 10, 9] }]);
  });
});

describe('what cannot be a stroke is a clear 422', () => {
  const withRecord = (record: object) => [...front, record];
  test.each<[string, () => unknown, string]>([
    ['no array', () => ({}), ''],
    ['an empty pack', () => [], ''],
    ['a record that is none', () => [...front, 7], '/3'],
    ['a unit that is not taken', () => withRecord({ n: 'front', u: 'W', t: 1, v: 3 }), '/3/u'],
    ['a unit that is not registered', () => withRecord({ n: 'front', u: 'amps', t: 1, v: 3 }), '/3/u'],
    ['no unit', () => [{ n: 'front', v: 3 }], '/0/u'],
    ['a name with a space', () => withRecord({ n: 'front side', v: 3 }), '/3/n'],
    ['a value that is text', () => withRecord({ n: 'front', v: '3' }), '/3/v'],
    ['a record without value', () => withRecord({ n: 'front', t: 1 }), '/3/v'],
    ['two values', () => withRecord({ n: 'front', v: 1, vb: true }), '/3/vb'],
    ['another version than before', () => withRecord({ bver: 9, n: 'front', t: 1, v: 3 }), '/3/bver'],
    ['a version to come', () => withRecord({ bver: 11, n: 'front', t: 1, v: 3 }), '/3/bver'],
    ['a field that must be understood', () => withRecord({ n: 'front', t: 1, v: 3, ct_: 1 }), '/3/ct_'],
    ['the same time twice', () => withRecord({ n: 'front', t: 0.02, v: 3 }), '/3/t'],
    ['an absurd current', () => withRecord({ n: 'front', t: 1, v: 1e9 }), '/3/v'],
    ['an absurd temperature', () => withRecord({ n: 'step', u: 'Cel', v: 1000 }), '/3/v'],
    ['a time beyond any calendar', () => [{ bt: 1e300, bu: 'A', n: 'front', v: 3 }], '/0/t'],
    [
      'two rooms',
      () => [randomUUID(), randomUUID()].map((id) => ({ n: `${id}/front`, u: 'A', v: 3 })),
      '/1/n',
    ],
  ])('%s', async (_, pack, pointer) => {
    const before = await countStrokes(service);
    const answer = await send(pack(), { roomId: fleet.roomId, key: randomUUID() });
    expect([answer.status, answer.body.type], answer.text).toEqual([422, '/problems/invalid-field']);
    expect(answer.body.errors.map((fault: { pointer: string }) => fault.pointer)).toContain(pointer);
    expect(await countStrokes(service)).toBe(before);
  });

  test('no room and no key', async () => {
    const answer = await send(front);
    expect(answer.status).toBe(422);
    const pointers = answer.body.errors.map((fault: { pointer: string }) => fault.pointer);
    expect(pointers).toEqual(['/key', '/roomId']);
  });

  test('a side that the room has not is rejected with its record', async () => {
    const pack = [
      { bt: START, bu: 'A', n: 'attic', v: 1 },
      { n: 'attic', t: 1, v: 2 },
    ];
    const answer = await send(pack, { roomId: fleet.roomId, key: randomUUID() });
    expect(answer.body.results[0]).toMatchObject({
      outcome: 'rejected',
      problem: { errors: [{ pointer: '/0/n' }] },
    });
  });

  test('no JSON', async () => {
    expect((await sendAs(service, fleet, JSON_PACK, '[{"n":')).status).toBe(422);
    expect((await sendAs(service, fleet, JSON_PACK, Buffer.of(0xff, 0xfe))).status).toBe(422);
  });
});
