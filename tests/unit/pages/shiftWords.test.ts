import { expect, test } from 'vitest';
import { shiftWords } from '../../../dashboards/src/compare/shiftWords.ts';
import { readAs } from '../../../dashboards/src/reader.ts';

readAs({ units: 'metric', timeZone: 'Europe/London', locale: 'en-GB' });

const NBSP = '\u00a0';

test.each([
  ['both ends of one fineness', -0.035, 0.074, 'A', 'No clear change: 0.035 A less to 0.074 A more'],
  ['the end that is further off decides', -0.12, 0.0094, 'A', 'No clear change: 0.12 A less to 0.01 A more'],
  ['nothing finer than thousandths', -0.0035, 0.00084, 'A', 'No clear change: 0.004 A less to 0.001 A more'],
  ['large values whole', -310, 1250, 'J', 'No clear change: 310 J less to 1,250 J more'],
  [
    'where no change is ruled out the nearer end is not 0',
    -0.15,
    -0.004,
    'A',
    '0.077 A less (0.004 A to 0.150 A)',
  ],
  ['a plain sure change', 0.2, 2.4, 'A', '1.3 A more (0.2 A to 2.4 A)'],
])('%s', (_, lower, upper, unit, expected) => {
  const excludesZero = lower > 0 || upper < 0;
  const shift = { lower, upper, unit, excludesZero, shift: (lower + upper) / 2 };
  const said = shiftWords({ measure: 'runningAmps', before: 1, after: 1, ...shift });
  expect(said?.replaceAll(NBSP, ' ')).toBe(expected);
});

test.each([
  ['share', -0.071, -0.061, '6.6% of the load less (6.1% to 7.1%)'],
  ['share', -0.0012, 0.0025, 'No clear change: 0.12% of the load less to 0.25% of the load more'],
  ['bulge', 0.02, 0.04, '3.0% of the running current more (2.0% to 4.0%)'],
])('a part says of what it is: %s', (measure, lower, upper, expected) => {
  const shift = { lower, upper, unit: '1', excludesZero: lower * upper > 0, shift: (lower + upper) / 2 };
  expect(shiftWords({ measure, before: 0.5, after: 0.5, ...shift })).toBe(expected);
});

test('nothing is said where there were too few strokes', () => {
  const nothing = { shift: null, lower: null, upper: null, excludesZero: false };
  expect(shiftWords({ measure: 'runningAmps', unit: 'A', before: 1, after: null, ...nothing })).toBeNull();
});
