import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { notTooOften } from '../../../dashboards/src/api/notTooOften.ts';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

test('passes on what comes alone at once, and of many the first and the last', () => {
  const heard: string[] = [];
  const { tell } = notTooOften((said: string) => heard.push(said), 1000);
  tell('alone');
  expect(heard).toEqual(['alone']);
  vi.advanceTimersByTime(1000);
  for (const said of ['first', 'second', 'last']) tell(said);
  expect(heard).toEqual(['alone', 'first']);
  vi.advanceTimersByTime(999);
  expect(heard).toEqual(['alone', 'first']);
  vi.advanceTimersByTime(1);
  expect(heard).toEqual(['alone', 'first', 'last']);
  tell('soon after');
  vi.advanceTimersByTime(1000);
  expect(heard).toEqual(['alone', 'first', 'last', 'soon after']);
});

test('tells nothing any more once it was stopped', () => {
  const heard: number[] = [];
  const { tell, stop } = notTooOften((said: number) => heard.push(said), 1000);
  tell(1);
  tell(2);
  stop();
  vi.advanceTimersByTime(5000);
  expect(heard).toEqual([1]);
});
