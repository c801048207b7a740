import { expect, test } from 'vitest';
import { quietUntil } from '../../../server/notices/quietUntil.ts';

const NIGHT = { from: '22:00', to: '07:00:00' };

/** By hand, from the zone's offsets: Berlin is UTC+1, from 29 March 2026 at 1:00 UTC to 25 October UTC+2. */
test.each([
  ['by day', '2026-01-10T12:00:00Z', NIGHT, 'UTC', null],
  ['at its end', '2026-01-10T07:00:00Z', NIGHT, 'UTC', null],
  ['at its beginning', '2026-01-10T22:00:00Z', NIGHT, 'UTC', '2026-01-11T07:00:00Z'],
  ['in the last minute', '2026-01-10T06:59:59Z', NIGHT, 'UTC', '2026-01-10T07:00:00Z'],
  ['past midnight', '2026-01-10T03:30:20Z', NIGHT, 'UTC', '2026-01-10T07:00:00Z'],
  ['within a day', '2026-01-10T13:30:00Z', { from: '12:00', to: '14:00' }, 'UTC', '2026-01-10T14:00:00Z'],
  ['elsewhere', '2026-01-10T21:30:00Z', NIGHT, 'Europe/Berlin', '2026-01-11T06:00:00Z'],
  ['elsewhere by day', '2026-01-11T06:30:00Z', NIGHT, 'Europe/Berlin', null],
  ['when clocks go forward', '2026-03-28T22:00:00Z', NIGHT, 'Europe/Berlin', '2026-03-29T05:00:00Z'],
  ['when clocks go back', '2026-10-24T21:00:00Z', NIGHT, 'Europe/Berlin', '2026-10-25T06:00:00Z'],
  ['with half an hour', '2026-01-10T18:00:00Z', NIGHT, 'Asia/Kolkata', '2026-01-11T01:30:00Z'],
])('%s', (_, now, hours, zone, until) => {
  expect(quietUntil(new Date(now), hours, zone)).toEqual(until === null ? null : new Date(until));
});
