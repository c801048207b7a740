import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests, settled, strokeBody } from '../strokes/strokeFixture.ts';
import { newRoomOf } from '../work/lentFixture.ts';
import { countStrokes, recording, sendAs, strokeOf, traceOf } from './formatsFixture.ts';

const service = serviceOfTests();
const fleet = fleetOfTests(service);

const START = '2026-05-02T16:20:11.000Z';
const send = (text: string, query: Record<string, string> = {}) =>
  sendAs(service, fleet, 'text/csv', text, {
    roomId: fleet.roomId,
    startedAt: START,
    key: randomUUID(),
    ...query,
  });

async function traces(answer: Awaited<ReturnType<typeof send>>) {
  const results: { outcome: string; strokeId: string }[] = answer.body?.results ?? [];
  expect(
    results.map(({ outcome }) => outcome),
    answer.text,
  ).toEqual(results.map(() => 'stored'));
  expect(results.length, answer.text).toBeGreaterThan(0);
  return Promise.all(results.map(({ strokeId }) => traceOf(service, fleet, strokeId)));
}

const T = [0, 0.02, 0.041];
const BOTH = [
  { side: 'front', t: T, amps: [0.02, 14.8, 9.1] },
  { side: 'rear', t: T, amps: [0.01, null, 9.3] },
];

describe('one stroke', () => {
  test.each<[string, string]>([
    ['commas', 't,front A,rear A\r\n0,0.02,0.01\r\n0.02,14.8,\r\n0.041,9.1,9.3\r\n'],
    ['semicolons and decimal commas', 't (s);front (A);rear [mA]\n0;0,02;10\n0,02;14,8;\n0,041;9,1;9300\n'],
    ['tabs and milliseconds', 'time_ms\tfrontAmps\trear_mA\n1000\t0.02\t10\n1020\t14.8\t\n1041\t9.1\t9300\n'],
    ['quotes', '"t","front A","rear A"\n"0","0,02","0,01"\n"0,02","14,8",""\n"0,041","9,1","9,3"'],
    ['clock time', 'clock,front,rear\n23:59:59.990,0.02,0.01\n00:00:00.010,14.8,\n00:00:00.031,9.1,9.3\n'],
    [
      'date and time',
      'time,front current A,rear current A\n2026-05-02 16:20:11,0.02,0.01\n2026-05-02 16:20:11.02,14.8,\n2026-05-02 16:20:11.041,9.1,9.3\n',
    ],
  ])('with %s', async (_, text) => {
    const [trace] = await traces(await send(text));
    expect(trace).toEqual({ sides: BOTH });
  });

  test.each(['amps', 'current_a', 'A', 'current', 'Strom (A)', 'I[A]', 'Ch1'])(
    'of the only side of a room, whatever that is called, where the only current is %s',
    async (title) => {
      const lone = await newRoomOf(service, fleet.token, { sides: ['kerb'] });
      const text = `t,${title}\n0,1\n1,2\n`;
      const query = { roomId: lone.roomId, startedAt: START, key: title, direction: 'extend' };
      const sent = await sendAs(service, lone, 'text/csv', text, query);
      expect(sent.body.results, sent.text).toMatchObject([{ outcome: 'stored' }]);
      const { strokeId } = sent.body.results[0];
      expect((await traceOf(service, lone, strokeId)).sides).toEqual([
        { side: 'kerb', t: [0, 1], amps: [1, 2] },
      ]);
      const asPerson = { ...lone, loggerToken: lone.token };
      const byHand = await sendAs(service, asPerson, 'text/csv', text, query);
      expect(byHand.body.results).toMatchObject([{ outcome: 'stored' }]);
      // Another logger is told of this room what it is told of one that does not exist.
      const [theirs, none] = await Promise.all(
        [query, { ...query, roomId: randomUUID() }].map((each) =>
          sendAs(service, fleet, 'text/csv', text, each),
        ),
      );
      expect(theirs.body).toEqual(none.body);
      expect((await send(text)).body.results).toMatchObject([{ outcome: 'rejected' }]);
    },
  );

  test('without times, at a rate, with its supply and temperature', async () => {
    const text = 'front A,rear A,supply V,ambient C\n0.02,0.01,12.9,18.5\n14.8,14.5,12.1,\n9.1,9.3,12.3,\n';
    const [trace] = await traces(await send(text, { rateHz: '50' }));
    expect(trace).toEqual({
      sides: [
        { side: 'front', rateHz: 50, amps: [0.02, 14.8, 9.1] },
        { side: 'rear', rateHz: 50, amps: [0.01, 14.5, 9.3] },
      ],
      supply: { rateHz: 50, volts: [12.9, 12.1, 12.3] },
      ambientC: 18.5,
    });
  });

  test('whose column names only its unit is of the side said', async () => {
    const [trace] = await traces(await send('t,amps\n0,1\n1,2\n', { side: 'rear' }));
    expect(trace.sides).toEqual([{ side: 'rear', t: [0, 1], amps: [1, 2] }]);
  });

  test('whose titles write the sides of the room in another way', async () => {
    const [trace] = await traces(await send('t,FRONT,"rear, A"\n0,1,2\n1,2,3\n'));
    expect(trace.sides.map(({ side }: { side: string }) => side)).toEqual(['front', 'rear']);
  });

  test('below what a meter writes above its table', async () => {
    const [trace] = await traces(await send('Model;M 1\r\n\r\nt (s);front A\r\n0;1,5\r\n1;2\r\n'));
    expect(trace.sides).toEqual([{ side: 'front', t: [0, 1], amps: [1.5, 2] }]);
  });

  test.each<[string, Uint8Array]>([
    [
      'UTF-16 behind its mark',
      Buffer.from('\ufeffTime (s)\tfront (A)\tTemp (°C)\n0\t1\t21.5\n1\t2\t\n', 'utf16le'),
    ],
    ['Windows-1252', Buffer.from('Time (s),front (A),Temp (°C)\n0,1,21.5\n1,2,\n', 'latin1')],
  ])('of a spreadsheet that writes %s', async (_, bytes) => {
    const query = { roomId: fleet.roomId, startedAt: START, key: randomUUID() };
    const [trace] = await traces(await sendAs(service, fleet, 'text/csv', bytes, query));
    expect(trace).toEqual({ sides: [{ side: 'front', t: [0, 1], amps: [1, 2] }], ambientC: 21.5 });
  });

  test('that the times place needs no startedAt', async () => {
    const text = 'time,front A\n2026-05-02T18:20:11.5+02:00,1\n2026-05-02T18:20:12.5+02:00,2\n';
    const query = { roomId: fleet.roomId, key: randomUUID() };
    const answer = await sendAs(service, fleet, 'text/csv', text, query);
    const stroke = await strokeOf(service, fleet, answer.body.results[0].strokeId);
    expect(stroke).toMatchObject({ key: query.key, startedAt: '2026-05-02T16:20:11.500Z' });
  });

  test('comes back as it was read, and is taken again', async () => {
    const body = strokeBody(fleet.roomId, 0, 9, {
      key: randomUUID(),
      supply: { rateHz: 10, volts: [12.9, 12.1] },
    });
    const sent = await service.as(fleet.loggerToken, 'POST', '/strokes', body);
    const path = `/strokes/${sent.body.results[0].strokeId}/trace`;
    const csv = await service.request('GET', path, { token: fleet.token, headers: { accept: 'text/csv' } });
    const [trace] = await traces(await send(csv.text));
    expect(trace.sides.map(({ amps }: { amps: number[] }) => amps)).toEqual(
      body.sides.map(({ amps }) => amps),
    );
    expect(trace.supply).toEqual({ t: [0, 0.1], volts: [12.9, 12.1] });
  });

  test('with a missed sample in its only column comes back with it', async () => {
    const amps = [1, null, 3, 4];
    const body = strokeBody(fleet.roomId, 0, 9, {
      key: randomUUID(),
      sides: [{ side: 'front', t: [0, 0.02, 0.04, 0.06], amps }],
    });
    const sent = await service.as(fleet.loggerToken, 'POST', '/strokes', body);
    const path = `/strokes/${sent.body.results[0].strokeId}/trace`;
    const csv = await service.request('GET', path, { token: fleet.token, headers: { accept: 'text/csv' } });
    const [trace] = await traces(await send(csv.text));
    expect(trace.sides).toEqual(body.sides);
    const supplied = await traces(
      await send('t (s),front A,supply V\n0,1,\n0.01,,12\n0.02,,\n0.04,3,12.5\n'),
    );
    expect(supplied[0]).toMatchObject({
      sides: [{ t: [0, 0.02, 0.04], amps: [1, null, 3] }],
      supply: { t: [0.01, 0.04], volts: [12, 12.5] },
    });
  });
});

const column = (samples: readonly number[]) => `front A\n${samples.join('\n')}\n`;
const outAndBack = recording([
  [5, 8, 9],
  [30, 7, -8],
]);

describe('a continuous recording', () => {
  test('is cut into strokes, whose directions the sign tells', async () => {
    const answer = await send(column(outAndBack), { key: 'day', rateHz: '10' });
    expect(answer.body.results.map(({ key }: { key: string }) => key)).toEqual(['day', 'day#2']);
    const [out, back] = await traces(answer);
    expect(out.sides[0].amps).toHaveLength(2 * 20 + 80);
    expect(Math.min(...back.sides[0].amps)).toBe(-20);
    await settled(service, fleet.token, fleet.roomId);
    const ids = answer.body.results.map(({ strokeId }: { strokeId: string }) => strokeId);
    const [first, second] = await Promise.all(ids.map((id: string) => strokeOf(service, fleet, id)));
    expect([first.analysis.direction, second.analysis.direction]).toEqual(['extend', 'retract']);
    expect(first.startedAt).toBe('2026-05-02T16:20:14.000Z');
    expect(second.startedAt).toBe('2026-05-02T16:20:52.000Z');
    const again = await send(column(outAndBack), { key: 'day', rateHz: '10' });
    expect(again.body.results.map(({ outcome }: { outcome: string }) => outcome)).toEqual([
      'duplicate',
      'duplicate',
    ]);
  });

  test('that has grown brings only what is new', async () => {
    const grown = recording([
      [5, 8, 9],
      [30, 7, -8],
      [30, 8, 9],
    ]);
    const lengths = [250, outAndBack.length, grown.length];
    const key = randomUUID();
    const told: string[][] = [];
    for (const length of lengths) {
      const answer = await send(column(grown.slice(0, length)), { key, rateHz: '10' });
      told.push(
        answer.body.results.map((one: { key: string; outcome: string }) => `${one.key} ${one.outcome}`),
      );
    }
    expect(told).toEqual([
      [`${key} stored`],
      [`${key} duplicate`, `${key}#2 stored`],
      [`${key} duplicate`, `${key}#2 duplicate`, `${key}#3 stored`],
    ]);
  });

  test('of a meter without sign takes a direction for each', async () => {
    const unsigned = column(outAndBack.map(Math.abs));
    const answer = await send(unsigned, { rateHz: '10', direction: 'extend,retract' });
    const strokes = await Promise.all(
      answer.body.results.map(({ strokeId }: { strokeId: string }) => strokeOf(service, fleet, strokeId)),
    );
    expect(strokes.map(({ direction }) => direction)).toEqual(['extend', 'retract']);
    const wrong = await send(unsigned, { rateHz: '10', direction: 'extend,retract,extend' });
    expect([wrong.status, wrong.body.errors[0].pointer]).toEqual([422, '/direction']);
  });

  test('asks for the direction where the sign does not tell it', async () => {
    const text = 't,front A,rear A\n0,5,-5\n1,5,-5\n2,5,-5\n';
    const answer = await send(text);
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/direction']);
    expect(answer.body.detail).toContain('direction=extend');
    expect((await send(text, { direction: 'extend' })).body.results[0].outcome).toBe('stored');
  });
});

describe('faults name line and column', () => {
  const rows = 't,front A\r\n0,1\r\n';
  test.each<[string, string, string, string]>([
    ['nothing', '', '/line/1', 'Line 1'],
    ['no row', 't,front A\r\n', '/line/1', 'No row'],
    ['no header', '0,1\r\n1,2\r\n', '/line/1', 'header'],
    ['no current', 't,supply V\r\n0,12\r\n', '/line/1', 'names no current'],
    ['a side twice', 't,front A,front mA\r\n0,1,1\r\n', '/line/1/column/3', 'twice'],
    ['text for a number', `${rows}1,many\r\n`, '/line/3/column/2', 'Line 3, column 2'],
    ['hexadecimal', `${rows}1,0x10\r\n`, '/line/3/column/2', 'Line 3, column 2'],
    ['an infinity', `${rows}1,Infinity\r\n`, '/line/3/column/2', 'Line 3, column 2'],
    ['a huge number', `${rows}1,1e300\r\n`, '/line/3/column/2', 'Line 3, column 2: Must lie between'],
    ['a time that does not rise', `${rows}0,2\r\n`, '/line/3/column/1', 'rise'],
    ['no time', `${rows},2\r\n`, '/line/3/column/1', 'Line 3, column 1'],
    ['a field too many', `${rows}1,2,3\r\n`, '/line/3', 'Line 3'],
    ['a quote not closed', `${rows}1,"2\r\n`, '/line/4', 'Line'],
    ['a line without end', ','.repeat(8_000_000), '/line/1', 'longer'],
    ['lines without end', `front\n${'1\n'.repeat(2_100_000)}`, '/line/2000001', 'More than'],
    ['an absurd temperature', 't,front A,temp C\r\n0,1,999\r\n1,2,\r\n', '/line/1/column/3', 'column 3'],
  ])('%s', async (_, text, pointer, said) => {
    const before = await countStrokes(service);
    const answer = await send(text);
    expect([answer.status, answer.body.type], answer.text).toEqual([422, '/problems/invalid-field']);
    expect(answer.body.errors[0].pointer).toMatch(new RegExp(`^${pointer}`));
    expect(answer.body.errors[0].detail).toContain(said);
    expect(await countStrokes(service)).toBe(before);
  });

  test.each<[string, Record<string, string>]>([
    ['roomId', { roomId: 'elsewhere' }],
    ['key', { key: '' }],
    ['startedAt', { startedAt: 'yesterday' }],
    ['direction', { direction: 'up' }],
    ['rateHz', { rateHz: 'many' }],
  ])('or the query: %s', async (field, query) => {
    const answer = await send('t,front A\n0,1\n1,2\n', query);
    const [fault] = (answer.body.results?.[0].problem ?? answer.body).errors;
    expect(fault.pointer).toBe(`/${field}`);
  });

  test('a column of a side that the room has not', async () => {
    const answer = await send('t,front A,attic A\n0,1,1\n1,2,2\n');
    expect(answer.body.results[0].problem.errors).toEqual([
      { pointer: '/line/1/column/3', detail: 'Line 1, column 3: The room has no such side.' },
    ]);
  });

  test('such a column below what a meter writes above its table', async () => {
    const answer = await send('Recorded in May\n\nt,front A,attic A\n0,1,1\n1,2,2\n');
    expect(answer.body.results[0].problem.errors).toEqual([
      { pointer: '/line/3/column/3', detail: 'Line 3, column 3: The room has no such side.' },
    ]);
  });

  test('a title with a character that cannot be stored', async () => {
    const answer = await send('t,fro\0nt A\n0,1\n1,2\n');
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/line/1/column/2']);
  });

  test('no rate and no times', async () => {
    const answer = await send('front A\n1\n2\n');
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/rateHz']);
  });
});
