import { expect, test } from 'vitest';
import type { ResolvedRecord } from '../../../ingest/senml/resolve.ts';
import { seriesOf } from '../../../ingest/senml/series.ts';

const record = (index: number, part: Partial<ResolvedRecord>): ResolvedRecord => ({
  index,
  name: 'front',
  unit: 'A',
  baseTime: 0,
  time: 0,
  value: 0,
  sum: null,
  text: null,
  flag: null,
  octets: null,
  ...part,
});

test.each([
  { unit: 'A', value: 14.8, is: 14.8, source: 'RFC 8428, 12.1' },
  { unit: 'mA', value: 14_800, is: 14.8, source: 'RFC 8798, 3' },
  { unit: 'V', value: 12.6, is: 12.6, source: 'RFC 8428, 12.1' },
  { unit: 'mV', value: 12_600, is: 12.6, source: 'RFC 8798, 3' },
])('$value $unit are $is ($source)', ({ unit, value, is }) => {
  const sent = record(0, { unit, value });
  expect(seriesOf([sent], sent).values).toEqual([is]);
});

test('records are put in order of time, each with its place in the pack, and a missed one stays a gap', () => {
  const first = record(0, { baseTime: 1.7e9, time: 0, value: 1 });
  const late = record(1, { baseTime: 1.7e9, time: 0.04, value: 3 });
  const missed = record(2, { baseTime: 1.7e9, time: 0.02, value: null });
  expect(seriesOf([first, late, missed], first)).toEqual({
    t: [0, 0.02, 0.04],
    values: [1, Number.NaN, 3],
    indices: [0, 2, 1],
  });
});

test('what a clock of seconds since 1970 cannot resolve is no part of a time', () => {
  const first = record(0, { time: 1_700_000_000.1 });
  const next = record(1, { time: 1_700_000_000.12 });
  expect(seriesOf([first, next], first).t).toEqual([0, 0.02]);
});
