import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { watchSilence } from '../../../dashboards/src/api/watchSilence.ts';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

const MINUTE = 60_000;

function watched() {
  const did: string[] = [];
  return {
    did,
    link: watchSilence(
      () => did.push('asked'),
      () => did.push('gave up'),
    ),
  };
}

test('a link that says something now and then is left alone', () => {
  const { did, link } = watched();
  for (let i = 0; i < 5; i++) {
    link.heard();
    vi.advanceTimersByTime(0.9 * MINUTE);
  }
  expect(did).toEqual([]);
});

test('a silent link is asked once, and given up where it does not answer', () => {
  const { did, link } = watched();
  link.heard();
  vi.advanceTimersByTime(MINUTE);
  expect(did).toEqual(['asked']);
  vi.advanceTimersByTime(MINUTE);
  expect(did).toEqual(['asked', 'gave up']);
  vi.advanceTimersByTime(10 * MINUTE);
  expect(did).toEqual(['asked', 'gave up']);
});

test('one that answers is asked again after the next silence', () => {
  const { did, link } = watched();
  link.heard();
  vi.advanceTimersByTime(MINUTE);
  link.heard();
  vi.advanceTimersByTime(0.9 * MINUTE);
  expect(did).toEqual(['asked']);
  vi.advanceTimersByTime(0.2 * MINUTE);
  expect(did).toEqual(['asked', 'asked']);
});

test('one that was stopped, also while it is asked, is not given up', () => {
  const { did, link } = watched();
  link.heard();
  vi.advanceTimersByTime(MINUTE);
  link.stop();
  vi.advanceTimersByTime(MINUTE);
  expect(did).toEqual(['asked']);
});
