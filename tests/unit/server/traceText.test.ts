import { expect, test } from 'vitest';
import type { RecordedTrace } from '../../../ingest/stroke.ts';
import { joinInTurns } from '../../../server/results/trace/joinInTurns.ts';
import { csvOfTrace, jsonOfTrace } from '../../../server/results/trace/traceText.ts';

const SAMPLES = 60_000;
const SIDES = Array.from({ length: 8 }, (_, i) => `side ${i}`);

/** A third of what a stroke may have, with numbers that take many digits. */
function longTrace(): RecordedTrace {
  const sides = SIDES.map((side, k) => ({
    side,
    clock: { t: Float64Array.from({ length: SAMPLES }, (_, i) => i / 4997) },
    amps: Float64Array.from({ length: SAMPLES }, (_, i) => (i % 1000 === 7 ? Number.NaN : Math.sin(i + k))),
  }));
  return { sides, supply: null, ambientC: 20 };
}

test.each([
  ['JSON', jsonOfTrace],
  ['CSV', csvOfTrace],
])('a long trace is put into %s with turns for others', async (_, textOf) => {
  const trace = longTrace();
  let turns = 0;
  let isDone = false;
  const count = () => {
    turns++;
    if (!isDone) setImmediate(count);
  };
  setImmediate(count);
  const text = await joinInTurns(textOf(trace));
  isDone = true;
  expect(turns).toBeGreaterThan(2);
  // What one piece ends with and the next begins with belongs together.
  expect(text.length).toBe([...textOf(trace)].join('').length);
});

test('JSON of many pieces is that of one, number by number', async () => {
  const trace = longTrace();
  const { sides, ambientC } = JSON.parse(await joinInTurns(jsonOfTrace(trace)));
  expect(ambientC).toBe(20);
  expect(sides.map(({ side }: { side: string }) => side)).toEqual(SIDES);
  const numbers = (sent: Float64Array) => Array.from(sent, (each) => (Number.isNaN(each) ? null : each));
  for (const [k, { t, amps }] of sides.entries()) {
    const { clock, amps: sent } = trace.sides[k];
    expect(t).toEqual('t' in clock ? Array.from(clock.t) : null);
    expect(amps).toEqual(numbers(sent));
  }
});

test('CSV of many pieces has every row once, in order', async () => {
  const clock = { rateHz: 100 };
  const amps = Float64Array.from({ length: 25_001 }, (_, i) => i / 8);
  const trace = { sides: [{ side: 'front, left', clock, amps }], supply: null, ambientC: -3.5 };
  const [titles, first, ...rows] = (await joinInTurns(csvOfTrace(trace))).split('\r\n');
  expect([titles, first, rows.pop()]).toEqual(['t (s),"front, left (A)",ambient (C)', '0,0,-3.5', '']);
  expect(rows).toEqual(Array.from({ length: 25_000 }, (_, i) => `${(i + 1) / 100},${(i + 1) / 8},`));
});
