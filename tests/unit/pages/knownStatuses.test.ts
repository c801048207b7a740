import { expect, test } from 'vitest';
import { knownStatuses } from '../../../dashboards/src/api/knownStatuses.ts';

type Push = Parameters<ReturnType<typeof knownStatuses>['isNews']>[0];

const status = (roomId: string, strokes: number): Push => ({
  type: 'status',
  roomId,
  status: {
    verdict: 'clear',
    headline: 'All well.',
    strokes,
    openWarnings: 0,
    lastStrokeAt: null,
    pending: 0,
    borrowed: null,
  },
});

test('whatever is pushed unasked is news, also where it says the same', () => {
  const known = knownStatuses();
  expect(known.isNews(status('a', 1))).toBe(true);
  expect(known.isNews(status('a', 1))).toBe(true);
});

test('an answer to what was asked in a silence is news only where it says something else', () => {
  const known = knownStatuses();
  known.isNews(status('a', 1));
  known.ask('a');
  expect(known.isNews(status('a', 1))).toBe(false);
  known.ask('a');
  expect(known.isNews(status('a', 2))).toBe(true);
});

test('one answer answers one question, and no other room does', () => {
  const known = knownStatuses();
  known.isNews(status('a', 1));
  known.isNews(status('b', 1));
  known.ask('a');
  expect(known.isNews(status('b', 1))).toBe(true);
  expect(known.isNews(status('a', 1))).toBe(false);
  expect(known.isNews(status('a', 1))).toBe(true);
});

test('a new link knows nothing, so that its first status is news', () => {
  const known = knownStatuses();
  known.isNews(status('a', 1));
  known.forget();
  known.ask('a');
  expect(known.isNews(status('a', 1))).toBe(true);
});
