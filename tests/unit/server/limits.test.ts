import { describe, expect, test } from 'vitest';
import { HashingTurns } from '../../../server/access/passwords/hashingTurns.ts';
import { AnswerMemory } from '../../../server/limits/answerMemory.ts';
import { BodyMemory } from '../../../server/limits/bodyMemory.ts';
import { SteadyStore } from '../../../server/limits/steadyStore.ts';
import { WorkTurns } from '../../../server/limits/workTurns.ts';
import { ProblemError } from '../../../server/problems.ts';

describe('the memory for bodies', () => {
  test('the oldest goes on beyond all limits, and the next once it has left', async () => {
    const memory = new BodyMemory(100, 60_000);
    const first = memory.begin('a');
    const second = memory.begin('b');
    expect(first.add(1000)).toBeNull();
    const wait = second.add(1);
    expect(wait).not.toBeNull();
    first.leave();
    await wait;
    expect(second.add(98)).toBeNull();
  });

  test('one sender has half of it, and what others have does not count against it', async () => {
    const memory = new BodyMemory(100, 60_000);
    expect(memory.begin('oldest').add(10)).toBeNull();
    expect(memory.begin('a').add(30)).toBeNull();
    expect(memory.begin('a').add(20)).toBeNull();
    const third = memory.begin('a');
    const wait = third.add(1);
    expect(memory.begin('b').add(30)).toBeNull();
    third.leave();
    await expect(wait).rejects.toBeInstanceOf(ProblemError);
  });

  test('who leaves while it waits, or waits too long, is told so', async () => {
    for (const waitMs of [1, 60_000]) {
      const memory = new BodyMemory(100, waitMs);
      expect(memory.begin('a').add(200)).toBeNull();
      const second = memory.begin('b');
      const wait = second.add(1);
      if (waitMs > 1) second.leave();
      await expect(wait).rejects.toBeInstanceOf(ProblemError);
    }
  });

  test('leaving twice gives back once', async () => {
    const memory = new BodyMemory(100, 60_000);
    expect(memory.begin('a').add(1)).toBeNull();
    const second = memory.begin('b');
    expect(second.add(40)).toBeNull();
    second.leave();
    second.leave();
    expect(memory.begin('c').add(99)).toBeNull();
    const last = memory.begin('d');
    const wait = last.add(1);
    last.leave();
    await expect(wait).rejects.toBeInstanceOf(ProblemError);
  });
});

describe('the memory for answers', () => {
  /** Whether its turn has come at once. */
  async function comes(turn: Promise<unknown>): Promise<boolean> {
    return (
      (await Promise.race([turn, new Promise((resolve) => setImmediate(resolve, 'not yet'))])) !== 'not yet'
    );
  }

  test('one goes however large it is, and others as far as there is room, of one sender half of it', async () => {
    const memory = new AnswerMemory(100, 60_000);
    const leave = await memory.take('a', 1000);
    const [own, other, more] = [memory.take('a', 10), memory.take('b', 60), memory.take('b', 30)];
    expect([await comes(own), await comes(other), await comes(more)]).toEqual([false, false, false]);
    leave();
    leave();
    const leaveOther = await other;
    expect([await comes(own), await comes(more)]).toEqual([true, false]);
    leaveOther();
    await more;
    expect(await comes(memory.take('c', 61))).toBe(false);
    expect(await comes(memory.take('d', 60))).toBe(true);
  });

  test('one that waits too long is told so, and is counted no more', async () => {
    const memory = new AnswerMemory(100, 1);
    const leave = await memory.take('a', 100);
    await expect(memory.take('b', 1)).rejects.toMatchObject({ problem: 'too-many-requests' });
    leave();
    expect(await comes(memory.take('c', 1000))).toBe(true);
  });
});

describe('turns for hashing', () => {
  test('two work at once, the others in the order in which they came, also after one that failed', async () => {
    const turns = new HashingTurns();
    const begun: number[] = [];
    const ends: (() => void)[] = [];
    const runs = [0, 1, 2, 3].map((n) =>
      turns.run(async () => {
        begun.push(n);
        await new Promise<void>((end) => ends.push(end));
        if (n === 1) throw new Error('This one fails.');
      }),
    );
    const failed = expect(runs[1]).rejects.toThrow('This one fails.');
    await new Promise(setImmediate);
    expect(begun).toEqual([0, 1]);
    ends[1]?.();
    await failed;
    await new Promise(setImmediate);
    expect(begun).toEqual([0, 1, 2]);
    ends[0]?.();
    await runs[0];
    await new Promise(setImmediate);
    expect(begun).toEqual([0, 1, 2, 3]);
    for (const end of ends) end();
    await Promise.all([runs[2], runs[3]]);
  });

  test('whoever comes when a thousand wait is told to come again', async () => {
    const turns = new HashingTurns();
    let end = () => {};
    const over = new Promise<void>((resolve) => {
      end = resolve;
    });
    const taken = Array.from({ length: 1002 }, () => turns.run(() => over));
    await expect(turns.run(() => over)).rejects.toMatchObject({ problem: 'too-many-requests' });
    end();
    await Promise.all(taken);
    await expect(turns.run(async () => 'done')).resolves.toBe('done');
  });
});

test('work is done in the order in which it was asked for, as much at once as fits', async () => {
  const turns = new WorkTurns(10);
  const done: string[] = [];
  const first = await turns.take(8);
  const second = turns.take(30).then((leave) => {
    done.push('too large to share');
    leave();
  });
  const third = turns.take(1).then((leave) => {
    done.push('small');
    leave();
  });
  expect(done).toEqual([]);
  first();
  first();
  await Promise.all([second, third]);
  expect(done).toEqual(['too large to share', 'small']);
});

test('a window of requests begins and ends by a clock that is never set back', () => {
  const store = new SteadyStore();
  const count = (key: string, windowMs: number) => {
    let told = { current: 0, ttl: 0 };
    store.incr(
      key,
      (_, result) => {
        told = result ?? told;
      },
      windowMs,
    );
    return told;
  };
  expect(count('a', 60_000)).toEqual({ current: 1, ttl: 60_000 });
  expect(count('a', 60_000).current).toBe(2);
  expect(count('b', 60_000).current).toBe(1);
  // A window of no length is over at once.
  expect(count('a', 0).current).toBe(1);
  const realNow = Date.now;
  try {
    Date.now = () => realNow() - 3_600_000;
    expect(count('b', 60_000).ttl).toBeLessThanOrEqual(60_000);
  } finally {
    Date.now = realNow;
  }
});
