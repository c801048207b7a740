import { describe, expect, test } from 'vitest';
import { readTable } from '../../../ingest/csv/table.ts';
import { DecodeError } from '../../../ingest/decodeError.ts';

const reading = {
  naming: { side: 'main', onlySide: 'main', roomSides: [] },
  timed: true,
  columns: null,
};

/** Seconds from the first row. */
function secondsOf(text: string): number[] {
  const { time } = readTable(text, reading);
  const [first = 0] = time?.seconds ?? [];
  return (time?.seconds ?? []).map((seconds) => Math.round((seconds - first) * 1e6) / 1e6);
}

function faultOf(text: string): string {
  try {
    readTable(text, reading);
  } catch (error) {
    if (error instanceof DecodeError) return `${error.faults[0].pointer} ${error.faults[0].detail}`;
    throw error;
  }
  return 'none';
}

describe('a column of days beside a clock', () => {
  test.each([
    ['2026-05-02', '2026-05-03'],
    ['2026/05/02', '2026/05/03'],
    ['02.05.2026', '03.05.2026'],
    ['5/2/2026', '5/3/2026'],
    ['2-5-26', '3-5-26'],
  ])('need not be read to be gone by: %s', (day, next) => {
    expect(
      secondsOf(`Date,Time,amps\n${day},23:59:59.5,1\n${day},23:59:59.75,2\n${next},00:00:00.25,3\n`),
    ).toEqual([0, 0.25, 0.75]);
    expect(secondsOf(`Time,Date,amps\n10:00:00,${day},1\n10:00:01,${day},2\n`)).toEqual([0, 1]);
    expect(secondsOf(`Time,amps\n${day} 10:00:00.5,1\n${day} 10:00:01,2\n`)).toEqual([0, 0.5]);
  });

  test('tells where more than a day is left out', () => {
    expect(faultOf('Date,Time,amps\n1.5.2026,10:00:00,1\n3.5.2026,11:00:00,2\n')).toMatch(
      /^\/line\/3\/column\/2 .*day/,
    );
  });

  test('is none where another clock stands beside it', () => {
    expect(faultOf('Time,Clock,amps\n10:00:00,10:00:00,1\n')).toMatch(/^\/line\/1\/column\/2 .*already/);
  });
});

describe('a clock', () => {
  test('of twice twelve hours', () => {
    expect(secondsOf('Time,amps\n11:59:59 AM,1\n12:00:00 PM,2\n1:00:00 pm,3\n')).toEqual([0, 1, 3601]);
    expect(secondsOf('Time,amps\n11:59:59 p.m.,1\n12:00:00 a.m.,2\n')).toEqual([0, 1]);
    expect(secondsOf('Time,amps\n5/2/2026 11:59:59 PM,1\n5/3/2026 12:00:00 AM,2\n')).toEqual([0, 1]);
    expect(faultOf('Time,amps\n13:00:00 PM,1\n')).toMatch(/^\/line\/2\/column\/1/);
    expect(faultOf('Time,amps\n0:00:00 AM,1\n')).toMatch(/^\/line\/2\/column\/1/);
  });

  test('of minutes, as spreadsheets leave the hour out where there are decimals, past the hour as well', () => {
    expect(secondsOf('Time;amps\n59:59,5;1\n00:00,0;2\n00:00,5;3\n')).toEqual([0, 0.5, 1]);
    expect(faultOf('Time,amps\n16:20,1\n16:21,2\n')).toMatch(/^\/line\/2\/column\/1/);
    expect(faultOf('Time,amps\n00:01.5,1\n00:00:02.5,2\n')).toMatch(/^\/line\/3\/column\/1/);
  });

  test('too coarse for its samples is told what to say instead', () => {
    expect(faultOf('Time,amps\n10:00:00,1\n10:00:00,2\n')).toMatch(/^\/line\/3\/column\/1 .*rateHz/);
  });
});
