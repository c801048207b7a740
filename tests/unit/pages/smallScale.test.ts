import { describe, expect, test } from 'vitest';
import { readAs } from '../../../dashboards/src/reader.ts';
import { roundScale } from '../../../dashboards/src/small/roundScale.ts';
import { type SmallScale, scaleOf, scaleOfParts } from '../../../dashboards/src/small/smallScale.ts';

readAs({ units: 'metric', timeZone: 'Europe/London', locale: 'en-GB' });

const told = ({ bottom, top, tell }: SmallScale) =>
  [top, (top + bottom) / 2, bottom].map((value) => tell(value).replaceAll('\u00a0', ' '));

describe('what stands beside a small picture', () => {
  test.each([
    ['a band of few per cent', [0.96, 1.04], ['+5%', 'normal', '-5%']],
    ['a side that draws more', [0.9, 1.27], ['+30%', 'normal', '-30%']],
    ['nothing off', [1, 1], ['+5%', 'normal', '-5%']],
    ['more than twice its normal', [0.95, 2.6], ['+200%', '+50%', '-100%']],
  ])('of parts of a normal: %s', (_, values, expected) => {
    expect(told(scaleOfParts(values, 'normal'))).toEqual(expected);
  });

  test.each([
    ['a current from nothing to a spike', [0, 6.7, 13.5], 'A', ['16 A', '8 A', '0 A']],
    ['a supply', [12.3, 10.4], 'V', ['14 V', '12 V', '10 V']],
    ['a share', [0.44, 0.61], '1', ['80%', '60%', '40%']],
    ['a lag on both sides of none', [-0.4, 0.7], 's', ['0.8 s', '0 s', '-0.8 s']],
  ])('of values in a unit: %s', (_, values, unit, expected) => {
    const scale = scaleOf(values, unit);
    expect(told(scale)).toEqual(expected);
    expect(scale.bottom).toBeLessThanOrEqual(Math.min(...values));
    expect(scale.top).toBeGreaterThanOrEqual(Math.max(...values));
  });
});

test('a single value has a scale too', () => {
  for (const value of [0, 5.2, -3]) {
    const { bottom, top } = roundScale(value, value);
    expect(bottom).toBeLessThanOrEqual(value);
    expect(top).toBeGreaterThan(bottom);
  }
});
