import type { FastifyBaseLogger } from 'fastify';
import type { Runner } from 'graphile-worker';
import { rest } from '../../rest.ts';

const TRY_AGAIN_AFTER_MS = 500;

/**
 * Keeps a runner of the queue at work. Where it cannot say what became of a job, as when the database dies under it, it
 * or one of its workers ends for good, and without a word: then the whole runner is started anew, as often as it takes.
 * Rejects where the first start fails.
 */
export async function keepRunning(
  start: () => Promise<Runner>,
  log: FastifyBaseLogger,
): Promise<{ stop(): Promise<void> }> {
  const stopping = new AbortController();
  let running = await start();
  let restarting: Promise<void> | null = null;

  const restart = async (why: unknown): Promise<void> => {
    log.warn({ err: why }, 'The work was cut off and is begun anew.');
    await stopRunner(running);
    while (!stopping.signal.aborted) {
      try {
        running = await start();
        break;
      } catch (error) {
        log.warn({ err: error }, 'The work cannot be begun yet.');
        await rest(TRY_AGAIN_AFTER_MS, stopping.signal);
      }
    }
    // First, as the new one may be lost already.
    restarting = null;
    watch();
  };
  const watch = (): void => {
    const watched = running;
    const lost = (why: unknown): void => {
      if (stopping.signal.aborted || restarting !== null || watched !== running) return;
      restarting = restart(why);
    };
    watched.events.on('worker:fatalError', ({ error }) => lost(error));
    watched.events.on('pool:fatalError', ({ error }) => lost(error));
    // It ends well, too, after it stopped itself.
    watched.promise.then(() => lost(new Error('The runner of the queue ended.')), lost);
  };
  watch();
  return {
    stop: async () => {
      stopping.abort();
      await restarting;
      await stopRunner(running);
    },
  };
}

async function stopRunner(runner: Runner): Promise<void> {
  // It refuses to be stopped where it stopped by itself.
  await runner.stop().catch(() => undefined);
}
