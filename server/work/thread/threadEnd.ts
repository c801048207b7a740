import type { Worker } from 'node:worker_threads';

/** Resolves once a thread is gone, in whatever way: one that dies of an error while it is to end has ended too. */
export function threadEnd(thread: Worker): Promise<void> {
  return new Promise((resolve) => {
    thread.once('exit', () => resolve());
  });
}
