import { describe, expect, test } from 'vitest';
import { StrokesPreview } from '../../../server/schemas/preview.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { countStrokes, recording } from '../forms/formatsFixture.ts';
import { fleetOfTests } from './strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

const START = '2026-05-02T16:20:11.000Z';

function ask(
  body: string | Uint8Array,
  query: Record<string, string> = {},
  headers: Record<string, string> = {},
) {
  const search = new URLSearchParams(query);
  return service.request('POST', `/rooms/${fleet.roomId}/strokes/preview?${search}`, {
    token: fleet.token,
    body,
    headers: { 'content-type': 'text/csv', ...headers },
  });
}

/** Two strokes, out and back, as a clamp meter writes them down: signed, ten samples a second. */
function outAndBack(title = 't (s);Ch1;Ch2;U [V]'): string {
  const front = recording([
    [5, 20, 9],
    [30, 20, -8],
  ]);
  const rows = front.map((amps, i) =>
    `${i / 10};${amps};${(amps * 0.9).toFixed(3)};12.6`.replaceAll('.', ','),
  );
  return [title, ...rows].join('\r\n');
}
const COLUMNS = 'time/s,side/front/A,side/rear/A,supply/V';

test('a column of decimal commas alone is one column', async () => {
  const [, ...rows] = outAndBack().split('\r\n');
  const column = ['A', ...rows.map((row) => row.split(';')[1])].join('\r\n');
  const { status, body, text } = await ask(column, { rateHz: '10', columns: 'side/front/A' });
  expect(status, text).toBe(200);
  expect(body).toMatchObject({ delimiter: null, rows: rows.length });
  expect(body.columns[0].examples).toEqual(['0,02', '0,02', '0,02']);
  expect(body.strokes.map(({ direction }: { direction: string }) => direction)).toEqual([
    'extend',
    'retract',
  ]);
});

test('what a meter writes above its table is passed over, and its lines counted', async () => {
  const alone = await ask(outAndBack());
  const { body } = await ask(`Model;M 1\r\nSerial;123\r\n\r\n${outAndBack()}`);
  expect([alone.body.passedLines, body.passedLines]).toEqual([0, 3]);
  expect({ ...body, key: '', passedLines: 0 }).toEqual({ ...alone.body, key: '' });
});

test('tells each column, where it is cut, and what is missing, and stores nothing', async () => {
  const before = await countStrokes(service);
  const { status, body, text } = await ask(outAndBack());
  expect(status, text).toBe(200);
  expect(StrokesPreview.strict().parse(body)).toEqual(body);
  expect(body.delimiter).toBe(';');
  expect(
    body.columns.map(({ title, kind, side, unit }: Record<string, string>) => [title, kind, side, unit]),
  ).toEqual([
    ['t (s)', 'time', null, 's'],
    ['Ch1', 'side', 'Ch1', 'A'],
    ['Ch2', 'side', 'Ch2', 'A'],
    ['U [V]', 'supply', null, 'V'],
  ]);
  expect(body.columns[1].examples).toEqual(['0,02', '0,02', '0,02']);
  expect(body.strokes.map((stroke: { direction: string }) => stroke.direction)).toEqual([
    'extend',
    'retract',
  ]);
  expect(body.strokes[0].startedAt).toBeNull();
  expect(body.problems.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
    '/column/2',
    '/column/3',
    '/startedAt',
  ]);
  expect(await countStrokes(service)).toBe(before);
});

test('what a person corrects is what is then stored, once', async () => {
  const query = { startedAt: START, columns: COLUMNS };
  const { body } = await ask(outAndBack(), query);
  expect(body.problems).toEqual([]);
  expect(body.strokes.map((stroke: { startedAt: string }) => stroke.startedAt)).toEqual([
    new Date(Date.parse(START) + 1000 * body.strokes[0].fromS).toISOString(),
    new Date(Date.parse(START) + 1000 * body.strokes[1].fromS).toISOString(),
  ]);
  const again = await ask(outAndBack(), query);
  expect(again.body.key).toBe(body.key);
  const send = async () => {
    const search = new URLSearchParams({ ...query, roomId: fleet.roomId, key: body.key });
    const answer = await service.request('POST', `/strokes?${search}`, {
      token: fleet.token,
      body: outAndBack(),
      headers: { 'content-type': 'text/csv' },
    });
    return answer.body.results.map(({ outcome, strokeId }: Record<string, string>) => ({
      outcome,
      strokeId,
    }));
  };
  const first = await send();
  expect(first.map(({ outcome }: { outcome: string }) => outcome)).toEqual(['stored', 'stored']);
  const second = await send();
  expect(second).toEqual(
    first.map(({ strokeId }: { strokeId: string }) => ({ outcome: 'duplicate', strokeId })),
  );
  const { body: stroke } = await service.as(fleet.token, 'GET', `/strokes/${first[1].strokeId}`);
  expect(stroke.sides.map(({ side }: { side: string }) => side)).toEqual(['front', 'rear']);
  expect(stroke.startedAt).toBe(body.strokes[1].startedAt);
  expect((await ask(outAndBack(), { ...query, startedAt: '2026-05-03T16:20:11Z' })).body.key).not.toBe(
    body.key,
  );
});

test('the same file is another recording once it is said to be of another side', async () => {
  const text = 'amps\n0\n9\n9\n0\n';
  const read = { startedAt: START, rateHz: '10', direction: 'extend' };
  const sides: Record<string, string>[] = [{}, { side: 'front' }, { side: 'rear' }];
  const keys = await Promise.all(sides.map(async (side) => (await ask(text, { ...read, ...side })).body.key));
  expect(new Set(keys).size).toBe(3);
});

test('a file without a header is read once it is said what its columns are', async () => {
  const text = outAndBack('').trim();
  const blind = await ask(text);
  expect(blind.body.columns.map(({ title, kind }: Record<string, string>) => [title, kind])).toEqual(
    Array.from({ length: 4 }, () => [null, 'none']),
  );
  expect(blind.body.problems[0]).toMatchObject({ pointer: '/line/1' });
  const told = await ask(text, { columns: COLUMNS, startedAt: START });
  expect(told.body.problems).toEqual([]);
  expect(told.body.strokes).toHaveLength(2);
  expect(told.body.rows).toBe((await ask(outAndBack(), { columns: COLUMNS })).body.rows);
});

test('a column of words is left out, and told with its line where it is said to be more', async () => {
  const words = 't,front A,remark\n0,0,start\n0.1,9,\n0.2,9,\n0.3,0,end\n';
  const query = { startedAt: START, direction: 'extend' };
  const { body } = await ask(words, query);
  expect(body.columns.map(({ kind }: { kind: string }) => kind)).toEqual(['time', 'side', 'none']);
  expect([body.problems, body.strokes.length]).toEqual([[], 1]);
  const said = await ask(words, { ...query, columns: 'time/s,side/front/A,side/rear/A' });
  expect(said.body.strokes).toEqual([]);
  expect(said.body.columns).toHaveLength(3);
  expect(said.body.problems).toContainEqual({
    pointer: '/line/2/column/3',
    detail: expect.stringMatching(/^Line 2, column 3: /),
  });
});

test('the picture of a long recording is thin and keeps its highest sample', async () => {
  const rows = Array.from({ length: 150_000 }, (_, i) => `${i === 77_777 ? 43.5 : 5 + (i % 7) / 10}`);
  const { body } = await ask(`front\n${rows.join('\n')}`, {
    rateHz: '500',
    startedAt: START,
    direction: 'extend',
  });
  expect(body.problems).toEqual([]);
  expect(body.rows).toBe(150_000);
  expect(body.sides[0].values.length).toBeLessThanOrEqual(3000);
  expect(Math.max(...body.sides[0].values)).toBe(43.5);
  expect(body.sides[0].seconds[body.sides[0].values.indexOf(43.5)]).toBeCloseTo(77_777 / 500, 6);
});

describe('a wrong file', () => {
  const PNG = Uint8Array.from([
    0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0xff, 0xfe, 0x80,
  ]);

  test.each<[string, string | Uint8Array, number, RegExp]>([
    ['a picture', PNG, 422, /UTF-8/],
    ['nothing', new Uint8Array(0), 422, /./],
    ['empty lines', '\n\n\r\n', 422, /nothing in the file/],
    ['a text', 'Dear customer,\nthe room sticks.\n', 200, /Line 2|no such side/],
    ['a header alone', 't,front A', 200, /No row follows/],
    ['no current', 't,supply V\n0,12\n1,12\n', 200, /names no current/],
    ['a row too short', 't,front A\n0,1\n1\n', 200, /Line 3/],
    ['a quote that stays open', 't,front A\n0,"1\n', 200, /quote/],
    ['a NUL', 't,front A\n0,\u00001\n', 200, /Line 2/],
    ['a current beyond any double', 't,front A\n0,1\n1,1e999\n', 200, /Line 3, column 2/],
    ['a supply beyond any double', 't,front A,supply V\n0,1,1e999\n1,1,12\n', 200, /Line 2, column 3/],
    ['a time beyond any double', 't (s),front A\n0,1\n1e999,2\n', 200, /Line 3, column 1/],
    ['a time beyond any calendar', 't (s),front A\n-1e308,1\n1e308,2\n', 200, /Line 2, column 1/],
    ['a day in no calendar', 't (ms),front A\n1e300,1\n', 200, /Line 2, column 1/],
  ])('%s is told as what it is', async (_, body, status, said) => {
    const answer = await ask(body);
    expect([answer.status, answer.text]).toEqual([status, expect.stringMatching(said)]);
  });

  test('is refused where it is no CSV by its own word, or too large', async () => {
    expect((await ask('{}', {}, { 'content-type': 'application/json' })).status).toBe(415);
    expect((await ask('{}', {}, { 'content-type': 'image/png' })).status).toBe(415);
    const large = await ask(new Uint8Array(33 * 1024 * 1024).fill(48));
    expect(large.status).toBe(413);
  });

  test.each(['0', '0.0', '-1', 'fast', '1e3'])('a rate of %s is told to be none', async (rateHz) => {
    const { status, body, text } = await ask('front A\n1\n2\n', { rateHz, startedAt: START });
    expect(status, text).toBe(200);
    expect(body.problems).toContainEqual({ pointer: '/rateHz', detail: expect.any(String) });
  });

  test.each([
    ['a role that there is not', 'time/h,side/front/A'],
    ['a unit that every object has', 'time/constructor,side/front/A'],
    ['a side without a name', 'time/s,side//A'],
    ['too few columns', 'time/s'],
    ['an open quote', '"time/s'],
    ['far too much', `${'none,'.repeat(1000)}none`],
  ])('columns that say %s are told so', async (_, columns) => {
    const answer = await ask('t,front A\n0,1\n1,2\n', { columns, startedAt: START });
    const faults = answer.status === 422 ? answer.body.errors : answer.body.problems;
    expect(faults, answer.text).toContainEqual({ pointer: '/columns', detail: expect.any(String) });
  });
});

test.each([
  ['2126-01-01T00:00:00Z', 'The recording began in the future.'],
  ['2014-12-31T23:59:59Z', 'The recording began before 2015.'],
])('a start that cannot be stands in the way: %s', async (startedAt, detail) => {
  const { body } = await ask(outAndBack(), { startedAt, columns: COLUMNS });
  expect(body.problems).toEqual([{ pointer: '/startedAt', detail }]);
});

test('where nothing flows there is no stroke, and that is said', async () => {
  const still = ['t,front A', ...Array.from({ length: 500 }, (_, i) => `${i / 25},0.01`)].join('\n');
  const { body } = await ask(still, { startedAt: START, direction: 'extend' });
  expect(body.strokes).toEqual([]);
  expect(body.problems).toEqual([{ pointer: '', detail: 'No current flows in this recording.' }]);
});
