import { expect, test } from 'vitest';
import { readAs } from '../../../dashboards/src/reader.ts';
import { sideSummary } from '../../../dashboards/src/stroke/travelWords.ts';

readAs({ units: 'metric', timeZone: 'Europe/London', locale: 'en-GB' });

const LINE = { side: 'rear', profile: [6, 6, 10.4, 6] };

test('the highest of a side is the spike that is higher than any step of its course', () => {
  const spikes = [{ position: 0.57, amps: 13.5, widthS: 0.3 }];
  expect(sideSummary(LINE, undefined, spikes)).toBe(
    'The rear side: mostly about 6.0\u00a0A, highest 13.5\u00a0A at 57% of the travel.',
  );
});

test('without a spike it is the highest step, told at its middle', () => {
  expect(sideSummary(LINE, undefined, [])).toBe(
    'The rear side: mostly about 6.0\u00a0A, highest 10.4\u00a0A at 63% of the travel.',
  );
});
