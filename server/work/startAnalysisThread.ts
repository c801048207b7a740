import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { AnalyseRoomPayload } from '../../ingest/analyseRoomJob.ts';
import type { AnalysisOutcome } from './analyseRoom.ts';
import type { AnalysisLog, FromThread, ThreadStart, ToThread } from './threadMessages.ts';

/** Analyses rooms in a thread of its own, so that no request waits for a calculation. */
export interface AnalysisThread {
  /** As `analyseRoom`. Rejects with what the analysis threw, or when the thread ends before it answers. */
  analyse(room: AnalyseRoomPayload): Promise<AnalysisOutcome>;
  /** Has the rooms under way left, each `stopped`. */
  stop(): void;
  /** Closes the thread and its connections; call it when every room was answered. */
  end(): Promise<void>;
}

interface Waiting {
  resolve(outcome: AnalysisOutcome): void;
  reject(error: unknown): void;
}

/** The thread begins with the first room, and anew with the next one should it ever die. */
export function startAnalysisThread(start: ThreadStart, log: AnalysisLog): AnalysisThread {
  let running: { readonly worker: Worker; readonly waiting: Map<number, Waiting> } | null = null;
  let stopped = false;
  let last = 0;
  const begin = () => {
    const waiting = new Map<number, Waiting>();
    const worker = new Worker(new URL('./threadEntry.mjs', import.meta.url), { workerData: start });
    let why: unknown;
    worker.on('message', (message: FromThread) => hear(message, waiting, log));
    worker.on('error', (error) => {
      why = error;
    });
    worker.on('exit', () => {
      if (running?.worker === worker) running = null;
      const error = new Error('The thread of the analysis ended.', { cause: why });
      for (const room of waiting.values()) room.reject(error);
    });
    return { worker, waiting };
  };
  const tell = (message: ToThread) => running?.worker.postMessage(message);
  return {
    analyse(room) {
      if (stopped) return Promise.resolve('stopped');
      running ??= begin();
      const { waiting } = running;
      const number = ++last;
      return new Promise((resolve, reject) => {
        waiting.set(number, { resolve, reject });
        tell({ type: 'analyse', number, room });
      });
    },
    stop() {
      stopped = true;
      tell({ type: 'stop' });
    },
    async end() {
      if (running === null) return;
      const gone = once(running.worker, 'exit');
      tell({ type: 'end' });
      await gone;
    },
  };
}

function hear(message: FromThread, waiting: Map<number, Waiting>, log: AnalysisLog): void {
  if (message.type === 'log') {
    log.error({ err: message.err, strokeId: message.strokeId }, message.message);
    return;
  }
  const room = waiting.get(message.number);
  waiting.delete(message.number);
  if (message.type === 'done') room?.resolve(message.outcome);
  else room?.reject(message.error);
}
