import { expect, test } from 'vitest';
import { weatherOf } from '../../../ingest/weather.ts';

test.each([
  { ambientC: null, weather: null },
  { ambientC: 0, weather: 0 },
  { ambientC: -40.5, weather: -40.5 },
  { ambientC: 50, weather: 50 },
  // A common one-wire sensor's power-on value (DS18B20, data sheet), and what stands for one that does not answer.
  { ambientC: 85, weather: null },
  { ambientC: -127, weather: null },
])('$ambientC degrees around a coach are taken for $weather', ({ ambientC, weather }) => {
  expect(weatherOf(ambientC)).toBe(weather);
});
