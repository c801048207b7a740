import { beforeAll, expect, test } from 'vitest';
import { MEASURE_INDEX, MEASURE_NAMES } from '../../../analysis/measures.ts';
import { Trend } from '../../../server/schemas/results.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);
const STROKES = 20_000;

/** Strokes that lie beyond the limits and are neither the lowest nor the highest of their neighbours. */
const HIDDEN = [4321, 4322, 4323];

/**
 * Years of strokes as the analysis leaves them behind: all alike but for two, one far above and one far below, and three
 * that only another day's conditions put beyond the limits; two of them were made at the same moment.
 */
async function addYears(): Promise<void> {
  await service.pool.query(
    `insert into strokes (account_id, id, room_id, sender_id, key, direction, started_at, placed_at,
       recorded_sides, has_supply)
     select account_id, gen_random_uuid(), id, id, n::text, 'extend', at, at, '{front}', false
     from rooms, generate_series(1, $2) n, lateral (
       select timestamptz '1998-01-01' + case n when 4322 then 4321 else n end * interval '1 hour'
         + interval '7 milliseconds' as at
     ) t
     where id = $1`,
    [fleet.roomId, STROKES],
  );
  const only = (value: string) =>
    `array[${MEASURE_NAMES.map((name) => (name === 'runningAmps' ? value : 'null')).join()}]`;
  await service.pool.query(
    `insert into measures (account_id, room_id, side, direction, placed_at, stroke_id, value, expected, adjusted,
       beyond)
     select account_id, room_id, 'front', 'extend', placed_at, id, ${only('amps')}::real[], ${only('9')}::real[],
       ${only('amps')}::real[],
       (amps > 20 or amps < 2 or key::integer in (${HIDDEN.join()}))::integer << ${MEASURE_INDEX.runningAmps}
     from strokes, lateral (select case key when '1234' then 31 when '2345' then 1
       else 9 + (key::integer * 7 % 10) / 10.0 end as amps) t
     where room_id = $1`,
    [fleet.roomId],
  );
}

beforeAll(async () => {
  await addYears();
});

const ask = (query: string) =>
  service.as(
    fleet.token,
    'GET',
    `/rooms/${fleet.roomId}/trend?measure=runningAmps&direction=extend&side=front${query}`,
  );

test('a thinned trend keeps the lowest, the highest, what is beyond and the newest, and tells how many there are', async () => {
  const [{ body: whole }, { body: thin, text }] = [await ask(''), await ask('&points=400')];
  expect([whole.points.length, whole.thinned]).toEqual([STROKES, undefined]);
  expect(Trend.strict().parse(thin)).toEqual(thin);
  expect(thin.thinned).toEqual({ points: STROKES, beyond: 2 + HIDDEN.length });
  expect(thin.points.length).toBeLessThanOrEqual(400 + 2 + HIDDEN.length);
  expect(text.length).toBeLessThan(150_000);
  const values = thin.points.map((point: { value: number }) => point.value);
  expect([Math.min(...values), Math.max(...values)]).toEqual([1, 31]);
  const times = thin.points.map((point: { at: string }) => point.at);
  expect(times).toEqual([...times].sort());
  expect(thin.points.slice(-200)).toEqual(whole.points.slice(-200));
  const beyond = (points: { beyond: boolean }[]) => points.filter((point) => point.beyond);
  expect(beyond(whole.points)).toHaveLength(2 + HIDDEN.length);
  expect(beyond(thin.points)).toEqual(beyond(whole.points));
});

test('what a thinned trend keeps is told as the whole tells it, in its order', async () => {
  const [{ body: whole }, { body: thin }] = [await ask(''), await ask('&points=400')];
  const kept = new Set(thin.points.map((point: { strokeId: string }) => point.strokeId));
  expect(kept.size).toBe(thin.points.length);
  expect(whole.points.filter((point: { strokeId: string }) => kept.has(point.strokeId))).toEqual(thin.points);
});

test('of each stretch the earliest of the lowest and of the highest stays', async () => {
  const [{ body: whole }, { body: thin }] = [await ask(''), await ask('&points=400')];
  // Half of the points asked for are the newest, the others two of each stretch of those before.
  const stretch = whole.points.slice(0, (STROKES - 200) / 100);
  const values = stretch.map((point: { value: number }) => point.value);
  const extremes = [Math.min(...values), Math.max(...values)].map((value) => values.indexOf(value));
  const first = thin.points.filter((point: { at: string }) => point.at <= stretch.at(-1).at);
  expect(first).toEqual(extremes.toSorted((a, b) => a - b).map((place) => stretch[place]));
});

test('with no more strokes than points it is the whole', async () => {
  const span = '&from=1998-01-01T00:30:00Z&to=1998-01-09T00:00:00.007Z';
  const [{ body: whole }, { body: same }] = [await ask(span), await ask(`${span}&points=400`)];
  expect(whole.points).toHaveLength(192);
  expect(same).toEqual(whole);
  expect((await ask('&points=400&from=1991-01-01T00:00:00Z&to=1991-02-01T00:00:00Z')).body.points).toEqual(
    [],
  );
});

test.each(['0', '1e9', '1e3', '0x100', '0400', '%20400', 'many', '150.5'])(
  'points=%s is 422',
  async (points) => {
    const answer = await ask(`&points=${points}`);
    expect([answer.status, answer.body.errors?.[0].pointer]).toEqual([422, '/points']);
  },
);
