import { describe, expect, test } from 'vitest';
import type { Trend } from '../../../dashboards/src/api/types.ts';
import { frameOfAll, frameOfTrend } from '../../../dashboards/src/charts/trend/trendFrame.ts';
import { trendExtent } from '../../../dashboards/src/charts/trend/trendValues.ts';
import { readAs } from '../../../dashboards/src/reader.ts';
import { trendSummary } from '../../../dashboards/src/room/trend/trendSummary.ts';

readAs({ units: 'metric', timeZone: 'Europe/London', locale: 'en-GB' });

const point = (
  day: number,
  value: number,
  adjusted: number | null,
  expected: number | null,
  beyond = false,
) => ({
  strokeId: String(day),
  at: `2026-05-0${day}T12:00:00.000Z`,
  value,
  adjusted,
  expected,
  beyond,
});
const TREND = {
  points: [point(1, 9, null, null), point(2, 7, 6.5, 7.5), point(3, 8, 7.8, 6, true)],
  limits: { lower: 5, centre: 6, upper: 7 },
  services: [],
  forecast: null,
} as unknown as Trend;
const FORECAST = { strokes: 12, lower: 8, upper: 20, coverage: 0.8, serviceLine: 9.6 };

describe('what a picture of a trend must have room for', () => {
  test('is the values brought to one supply, where there are such, with the normal and the service line', () => {
    expect(trendExtent(TREND, 'adjusted')).toEqual([5, 9]);
    expect(trendExtent({ ...TREND, forecast: FORECAST } as Trend, 'adjusted')).toEqual([5, 9.6]);
    expect(trendExtent({ ...TREND, limits: null }, 'adjusted')).toEqual([6.5, 9]);
  });

  test('is the values as measured with what was expected of each', () => {
    expect(trendExtent(TREND, 'measured')).toEqual([6, 9]);
  });

  test('is nothing where there is no stroke', () => {
    expect(trendExtent({ ...TREND, points: [], limits: null }, 'adjusted')).toBeNull();
  });
});

describe('what is said of it', () => {
  const plain = (text: string) => text.replaceAll(/\s/g, ' ');

  test('is how many, the latest, the normal, and how many lie outside', () => {
    expect(plain(trendSummary(TREND, 'A', 'adjusted'))).toBe(
      '3 strokes from 1 May 2026 to 3 May 2026. The latest is 7.8 A. Its normal is 5.0 A to 7.0 A. 1 is outside the normal.',
    );
  });

  test('leaves out the normal beside values as measured, as that is not on their scale', () => {
    const said = plain(trendSummary(TREND, 'A', 'measured'));
    expect(said).toContain('The latest is 8.0 A.');
    expect(said).not.toContain('Its normal is');
  });

  test('counts what a thinned course leaves out', () => {
    const thinned = { points: 9000, beyond: 4 };
    const said = plain(trendSummary({ ...TREND, thinned } as unknown as Trend, 'A', 'adjusted'));
    expect(said).toMatch(/^9000 strokes from .* 4 are outside the normal\.$/);
  });

  test('ends with when the service line is reached, and says so where its far end is unknown', () => {
    const said = (upper: number | null) =>
      plain(trendSummary({ ...TREND, forecast: { ...FORECAST, upper } } as Trend, 'A', 'adjusted'));
    expect(said(20)).toMatch(
      /service line of 9\.6 A in about 12 more strokes this way, 8 to 20 \(80% sure\)\.$/,
    );
    expect(said(null)).toMatch(/12 more strokes this way, 8 or more \(80% sure\)\.$/);
  });
});

describe('what the pictures of all sides share', () => {
  const days = (from: number, to: number) =>
    [from, to].map((day) => Date.parse(`2026-05-0${day}T12:00:00.000Z`) / 1000);

  test('holds every side: its values, its strokes and what is to come of it', () => {
    const other = { ...TREND, points: [point(2, 20, 20, null), point(6, 3, 3, null)] } as Trend;
    const frames = [frameOfTrend(TREND, 'adjusted')!, frameOfTrend(other, 'adjusted')!];
    expect(frameOfAll(frames)).toEqual({ values: [3, 20], times: days(1, 6) });
    const foreseen = frameOfTrend({ ...TREND, forecast: FORECAST } as Trend, 'adjusted')!;
    // Of a stroke a day more could come than it has room for: three fifths of the two days that were.
    expect(foreseen.times).toEqual([days(1, 3)[0], days(1, 3)[1] + 0.6 * 2 * 86_400]);
    expect(frameOfAll([...frames, foreseen])!.times).toEqual(days(1, 6));
  });

  test('begins with work done before the first stroke, and is nothing where there is no stroke', () => {
    const worked = { ...TREND, services: [{ at: '2026-04-30T12:00:00.000Z' }] } as Trend;
    expect(frameOfTrend(worked, 'measured')!.times[0]).toBe(days(1, 1)[0] - 86_400);
    expect(frameOfTrend({ ...TREND, points: [], limits: null }, 'adjusted')).toBeNull();
    expect(frameOfAll([])).toBeNull();
  });
});
