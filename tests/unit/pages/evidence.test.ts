import { expect, test } from 'vitest';
import { readAs } from '../../../dashboards/src/reader.ts';
import { evidenceLines } from '../../../dashboards/src/room/evidence/evidence.ts';
import { howSure } from '../../../dashboards/src/room/warnings/howSure.ts';

readAs({ units: 'metric', timeZone: 'Europe/London', locale: 'en-GB' });

test('a stretch is told from where to where, in whatever order it comes', () => {
  expect(evidenceLines({ to: 0.719, from: 0.375 })).toEqual([
    ['From', '38%'],
    ['To', '72%'],
  ]);
});

test('what one stroke drew is not taken for how far the strokes have risen', () => {
  const lines = evidenceLines({ sigmas: 1.4, risePercent: 18, expectedAmps: 17.99, measuredAmps: 19.45 });
  expect(lines).toEqual([
    ['Above its normal by', '18%'],
    ['Latest stroke', '19.5\u00a0A'],
    ['Expected', '18.0\u00a0A'],
  ]);
});

test('what the headline says of a record is not said again, nor by the name that machines have for it', () => {
  expect(evidenceLines({ doubt: 'offset', detail: 'Its zero moved.', restAmps: -11.36 })).toEqual([
    ['Reads at rest', '-11.4\u00a0A'],
  ]);
});

test('a latest stroke that is near its normal makes nobody sure: that several agree does', () => {
  const kind = 'rising-draw';
  expect(howSure({ kind, evidence: { sigmas: 6.2 } })).toMatch(/^Very sure/);
  expect(howSure({ kind, evidence: { sigmas: 3.3 } })).toMatch(/^Quite sure/);
  expect(howSure({ kind, evidence: { sigmas: 1.4 } })).toBe('Several strokes in a row agree.');
});

test('how far from normal it is, and in how many strokes, is told once and in whole numbers', () => {
  const spikes = { heightPercent: 61, strokesWithSpikes: 7, strokesLookedAt: 8, sigmas: 16.6 };
  expect(evidenceLines(spikes)).toEqual([['Height of the spikes', '61%']]);
  expect(howSure({ kind: 'stall-spike', evidence: spikes })).toBe('It was seen in 7 of the last 8 strokes.');
  expect(howSure({ kind: 'uneven-sides', evidence: { sigmas: 16.6 } })).toMatch(/ 17 times as far /);
});
