import { EventEmitter } from 'node:events';
import type { FastifyBaseLogger } from 'fastify';
import type { Runner } from 'graphile-worker';
import { expect, test } from 'vitest';
import { keepRunning } from '../../../server/work/jobs/keepRunning.ts';

// What it says is not looked at.
const LOG = { warn: () => undefined } as unknown as FastifyBaseLogger;

class FakeRunner {
  readonly events = new EventEmitter();
  readonly promise: Promise<void>;
  stopped = 0;

  constructor(promise: Promise<void> = new Promise(() => undefined)) {
    this.promise = promise;
    promise.catch(() => undefined);
  }

  async stop(): Promise<void> {
    this.stopped++;
  }
}

/** Starts these one after the other; `all` resolves once the last of them was started. */
function starting(runners: readonly FakeRunner[]) {
  let started = 0;
  let done = (): void => undefined;
  const all = new Promise<void>((resolve) => {
    done = resolve;
  });
  const start = async (): Promise<Runner> => {
    const runner = runners[started++];
    if (started === runners.length) done();
    // As far as `keepRunning` looks at one.
    return runner as unknown as Runner;
  };
  return { start, all };
}

test.each<[string, (runner: FakeRunner) => void]>([
  ['a worker', ({ events }) => events.emit('worker:fatalError', { error: new Error('gone') })],
  ['its pool', ({ events }) => events.emit('pool:fatalError', { error: new Error('gone') })],
])('a runner that loses %s is stopped, and another one begins', async (_, lose) => {
  const [first, second] = [new FakeRunner(), new FakeRunner()];
  const { start, all } = starting([first, second]);
  const kept = await keepRunning(start, LOG);
  lose(first);
  await all;
  await kept.stop();
  expect([first.stopped, second.stopped]).toEqual([1, 1]);
});

test('one that is lost by the time that it was started is followed by another', async () => {
  const [first, lost, last] = [
    new FakeRunner(),
    new FakeRunner(Promise.reject(new Error('the database went away'))),
    new FakeRunner(),
  ];
  const { start, all } = starting([first, lost, last]);
  const kept = await keepRunning(start, LOG);
  first.events.emit('pool:fatalError', { error: new Error('gone') });
  await all;
  await kept.stop();
  expect([first.stopped, lost.stopped, last.stopped]).toEqual([1, 1, 1]);
});
