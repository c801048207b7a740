import { describe, expect, test } from 'vitest';
import { parseTimestamp } from '../../../ingest/timestamp.ts';

/** RFC 3339, Date and Time on the Internet: Timestamps (2002), sections 5.6 to 5.8; seconds by another tool. */
describe('times of RFC 3339', () => {
  test.each([
    ['1985-04-12T23:20:50.52Z', 482196050.52, 'section 5.8'],
    ['1996-12-19T16:39:57-08:00', 851042397.0, 'section 5.8'],
    ['1937-01-01T12:00:27.87+00:20', -1041337172.13, 'section 5.8'],
    ['1985-04-12t23:20:50.52z', 482196050.52, 'lower case t and z are allowed (5.6)'],
    ['2024-02-29T00:00:00Z', 1709164800.0, 'leap day'],
    ['1970-01-01T00:00:00+00:00', 0.0, 'epoch'],
    ['2000-01-01T00:00:00-00:00', 946684800.0, 'offset unknown (4.3)'],
    ['1978-07-04T21:24:16Z', 268435456.0, '2^28'],
    ['1990-12-31T23:59:60Z', 662688000, 'leap second (5.8), counted as the second after it'],
    ['1990-12-31T15:59:60-08:00', 662688000, 'the same instant'],
  ])('%s', (text, unixSeconds) => {
    expect(parseTimestamp(text)).toBeCloseTo(unixSeconds * 1000, 3);
  });

  test.each([
    '1985-04-12T23:20:50',
    '1985-04-12 23:20',
    '1985-4-12T23:20:50Z',
    '1985-04-12T24:00:00Z',
    '1985-13-01T00:00:00Z',
    '2023-02-29T00:00:00Z',
    '1985-04-31T00:00:00Z',
    '1985-04-12T23:60:50Z',
    '1985-04-12T23:20:61Z',
    '1985-04-12T23:20:50.Z',
    '1985-04-12T23:20:50,5Z',
    '1985-04-12T23:20:50+0800',
    '1985-04-12T23:20:50+8:00',
    '85-04-12T23:20:50Z',
    '1985-04-12',
    '1985-04-12T23:20:50+24:00',
    '1985-04-12T23:20:60Z',
    '0000-01-01T00:00:00Z',
    '9999-12-31T23:59:59-01:00',
    '1900-02-29T00:00:00Z',
  ])('%s is none', (text) => {
    expect(parseTimestamp(text)).toBeNull();
  });

  test('years below 100 are not of the twentieth century', () => {
    expect(parseTimestamp('0050-01-01T00:00:00Z')).toBe(Date.parse('0050-01-01T00:00:00Z'));
  });
});
