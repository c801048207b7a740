import { expect, test } from 'vitest';
import { workWaiting } from '../../../server/metrics/workWaiting.ts';

/** A database that counts how often it is asked, and fails when told to. */
function askedDatabase() {
  const asked = { times: 0, fails: false };
  const query = async () => {
    asked.times++;
    if (asked.fails) throw new Error('gone');
    return { rows: [{ rooms: asked.times, oldestS: 0 }] };
  };
  // Only the rows of the answer are read.
  return { asked, pool: { query } as never };
}

const warnings: unknown[] = [];
const log = { warn: (details: unknown) => warnings.push(details) } as never;

test('is asked at most every five seconds, however often it is read at once', async () => {
  let now = 0;
  const { asked, pool } = askedDatabase();
  const waiting = workWaiting(pool, log, () => now);
  await Promise.all(Array.from({ length: 20 }, waiting));
  now = 4999;
  expect((await waiting()).rooms).toBe(1);
  now = 5000;
  expect((await waiting()).rooms).toBe(2);
  expect(asked.times).toBe(2);
});

test('answers what it knew while the database does not answer, and asks again later', async () => {
  let now = 0;
  const { asked, pool } = askedDatabase();
  const waiting = workWaiting(pool, log, () => now);
  await waiting();
  asked.fails = true;
  now = 6000;
  expect((await waiting()).rooms).toBe(1);
  expect(warnings).toHaveLength(1);
  asked.fails = false;
  now = 12_000;
  expect((await waiting()).rooms).toBe(3);
});
