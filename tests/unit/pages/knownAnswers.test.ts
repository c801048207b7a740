import { afterEach, expect, test } from 'vitest';
import { forgetAnswers, knownAnswer, learnAnswer } from '../../../dashboards/src/api/knownAnswers.ts';

afterEach(forgetAnswers);

test('the answers of a long visit do not pile up: those that were learnt longest ago are forgotten', () => {
  learnAnswer('/rooms/first', 'first');
  learnAnswer('/session', 'whoever is signed in');
  for (let stroke = 0; stroke < 1000; stroke++) {
    learnAnswer(`/strokes/${stroke}/trace`, 'many samples');
    if (stroke % 100 === 0) learnAnswer('/session', 'the same');
  }
  expect(knownAnswer('/rooms/first')).toBeNull();
  expect(knownAnswer('/strokes/0/trace')).toBeNull();
  expect(knownAnswer('/strokes/999/trace')?.value).toBe('many samples');
  expect(knownAnswer('/session')?.value).toBe('the same');
});
