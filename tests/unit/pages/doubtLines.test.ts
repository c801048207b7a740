import { expect, test } from 'vitest';
import type { Doubt } from '../../../analysis/measures.ts';
import { doubtLines } from '../../../dashboards/src/stroke/doubtLines.ts';

/** Complete, or the compiler says so. */
const EVERY: Readonly<Record<Doubt, true>> = {
  clipped: true,
  offset: true,
  scale: true,
  gaps: true,
  noise: true,
  clock: true,
  flat: true,
  reversed: true,
};

const doubt = (side: string, kind: Doubt, detail: string) => ({ side, doubt: kind, detail });

test('whatever the analysis doubts is named in words', () => {
  for (const kind of Object.keys(EVERY) as Doubt[]) {
    const [{ title }] = doubtLines([doubt('front', kind, 'It is so.')]);
    expect(title).toMatch(/^[A-Z][a-z ]+/);
  }
});

test('what goes for both sides is said once and names both', () => {
  const gaps = 'A tenth of the samples are missing.';
  expect(
    doubtLines([
      doubt('front', 'gaps', gaps),
      doubt('front', 'noise', 'It is noisy.'),
      doubt('rear', 'gaps', gaps),
    ]),
  ).toEqual([
    { title: 'Gaps, front, rear', detail: gaps },
    { title: 'Noisy, front', detail: 'It is noisy.' },
  ]);
});

test('a date is of the whole record, of no side', () => {
  const ahead = 'Its date lies ahead.';
  expect(doubtLines([doubt('front', 'clock', ahead), doubt('rear', 'clock', ahead)])).toEqual([
    { title: 'Clock in doubt', detail: ahead },
  ]);
});
