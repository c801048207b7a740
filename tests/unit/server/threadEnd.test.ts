import { Worker } from 'node:worker_threads';
import { expect, test } from 'vitest';
import { threadEnd } from '../../../server/work/thread/threadEnd.ts';

test.each([
  ['comes to its end', ''],
  ['ends by itself', 'process.exit(3)'],
  ['dies of an error', 'throw new Error("out of luck")'],
])('a thread that %s has ended', async (_, program) => {
  const thread = new Worker(program, { eval: true });
  thread.on('error', () => undefined);
  await threadEnd(thread);
  expect(thread.threadId).toBe(-1);
});
