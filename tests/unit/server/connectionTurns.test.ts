import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { isUnavailable } from '../../../ingest/unavailable.ts';
import { ConnectionTurns } from '../../../server/database/connectionTurns.ts';

const WAIT = { standStillMs: 5000, mostMs: 30_000 };

beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] }));
afterEach(() => vi.useRealTimers());

/** What becomes of one who asks: looked at when it is read. */
function ask(turns: ConnectionTurns): { outcome: 'waits' | 'has one' | 'gave up'; error?: unknown } {
  const one: ReturnType<typeof ask> = { outcome: 'waits' };
  turns.take().then(
    () => {
      one.outcome = 'has one';
    },
    (error: unknown) => {
      one.outcome = 'gave up';
      one.error = error;
    },
  );
  return one;
}

describe('turns at connections', () => {
  test('go to those who asked first', async () => {
    const turns = new ConnectionTurns(2, WAIT);
    const asked = [1, 2, 3, 4].map(() => ask(turns));
    await vi.advanceTimersByTimeAsync(0);
    expect(asked.map(({ outcome }) => outcome)).toEqual(['has one', 'has one', 'waits', 'waits']);
    turns.giveBack();
    await vi.advanceTimersByTimeAsync(0);
    expect(asked.map(({ outcome }) => outcome)).toEqual(['has one', 'has one', 'has one', 'waits']);
    expect(turns.waiting).toBe(1);
  });

  test('are waited for past what a database may stand still, as long as others have theirs', async () => {
    const turns = new ConnectionTurns(1, WAIT);
    const before = Array.from({ length: 6 }, () => ask(turns));
    const last = ask(turns);
    for (const _ of before) {
      await vi.advanceTimersByTimeAsync(4000);
      expect(last.outcome).toBe('waits');
      turns.giveBack();
    }
    await vi.advanceTimersByTimeAsync(0);
    expect(last.outcome).toBe('has one');
  });

  test('are given up where none comes back, and as what may be tried again', async () => {
    const turns = new ConnectionTurns(1, WAIT);
    ask(turns);
    const other = ask(turns);
    await vi.advanceTimersByTimeAsync(4999);
    expect(other.outcome).toBe('waits');
    await vi.advanceTimersByTimeAsync(2);
    expect(other.outcome).toBe('gave up');
    expect(isUnavailable(other.error)).toBe(true);
    turns.giveBack();
    expect(turns.waiting).toBe(0);
  });

  test('are not waited for without end, whoever else is served', async () => {
    const turns = new ConnectionTurns(1, WAIT);
    for (let asked = 0; asked < 50; asked++) ask(turns);
    const last = ask(turns);
    for (let passedMs = 0; passedMs < 30_000; passedMs += 1000) {
      turns.giveBack();
      await vi.advanceTimersByTimeAsync(1000);
    }
    expect(last.outcome).toBe('gave up');
  });

  test('pass on what nobody could use, which serves nobody', async () => {
    const turns = new ConnectionTurns(1, WAIT);
    ask(turns);
    const [next, last] = [ask(turns), ask(turns)];
    await vi.advanceTimersByTimeAsync(3000);
    turns.giveBackUnused();
    await vi.advanceTimersByTimeAsync(2001);
    expect([next.outcome, last.outcome]).toEqual(['has one', 'gave up']);
  });
});
