import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { AnalysisLog, FromThread, ThreadStart, ToThread } from './threadMessages.ts';

const BEGIN_AGAIN_AFTER_MS = 1000;

/** Keeps rooms up to date in a thread of its own, so that no request waits for a calculation. */
export interface AnalysisThread {
  /** Leaves the rooms under way, to be found by the next one, and closes the thread and its connections. */
  stop(): Promise<void>;
}

/** Should the thread ever die, another one begins. */
export function startAnalysisThread(start: ThreadStart, log: AnalysisLog): AnalysisThread {
  let stopped = false;
  let worker: Worker | null = null;
  let waiting: NodeJS.Timeout | null = null;
  const begin = (): void => {
    const begun = new Worker(new URL('./threadEntry.mjs', import.meta.url), { workerData: start });
    worker = begun;
    begun.on('message', (said: FromThread) => {
      if ('seconds' in said) log.done?.(said);
      else log.error(said.details, said.message);
    });
    begun.on('error', (err) => log.error({ err }, 'The thread of the analysis died.'));
    begun.on('exit', () => {
      worker = null;
      if (!stopped) waiting = setTimeout(begin, BEGIN_AGAIN_AFTER_MS);
    });
  };
  begin();
  return {
    async stop() {
      stopped = true;
      if (waiting !== null) clearTimeout(waiting);
      if (worker === null) return;
      const gone = once(worker, 'exit');
      worker.postMessage('stop' satisfies ToThread);
      await gone;
    },
  };
}
