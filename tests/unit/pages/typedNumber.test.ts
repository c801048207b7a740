import { expect, test } from 'vitest';
import { typedNumber } from '../../../dashboards/src/forms/numbers.ts';

test.each([
  ['12.5', 12.5],
  ['12,5', 12.5],
  [' 0,125 ', 0.125],
  ['.5', 0.5],
  ['-3', -3],
  ['1000', 1000],
  ['1.250', 1.25],
])('%j is read as %d', (text, number) => {
  expect(typedNumber(text)).toBe(number);
});

test('nothing is null', () => {
  expect(typedNumber('  ')).toBeNull();
});

test.each(['1,000', '12,500', '-1,000'])(
  '%j is a thousand times as much to some: it is asked again',
  (text) => {
    expect(typedNumber(text)).toBeNaN();
  },
);

test.each(['1,000,000', '1e3', 'ten', '1.', '--1'])('%j is no number', (text) => {
  expect(typedNumber(text)).toBeNaN();
});
