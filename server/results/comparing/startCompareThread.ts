import { Worker } from 'node:worker_threads';
import type { SpanComparison } from '../../../analysis/compare/compareSpans.ts';
import { ProblemError } from '../../problems.ts';
import type { FromCompareThread, ToCompareThread } from './compareMessages.ts';

/** Two spans of two thousand strokes each, copied, are some tens of megabytes. */
const LIMITS = { maxYoungGenerationSizeMb: 16, maxOldGenerationSizeMb: 256 };

/** Compares spans beside the thread that serves requests. */
export interface CompareThread {
  /** Rejects with what failed there, and with the 503 problem where the thread ends meanwhile. */
  compare(asked: ToCompareThread): Promise<SpanComparison>;
  stop(): Promise<void>;
}

interface Asked {
  readonly resolve: (comparison: SpanComparison) => void;
  readonly reject: (failure: unknown) => void;
}

/** `onEnd` is called when it has ended, by itself or not: nothing can be asked of it any more. */
export function startCompareThread(onEnd: () => void): CompareThread {
  const worker = new Worker(new URL('./compareEntry.mjs', import.meta.url), { resourceLimits: LIMITS });
  worker.unref();
  const asked: Asked[] = [];
  worker.on('message', (said: FromCompareThread) => {
    const first = asked.shift();
    if ('comparison' in said) first?.resolve(said.comparison);
    else first?.reject(said.failure);
  });
  const cutOff = (cause?: Error): void => {
    const failure = new ProblemError('unavailable', 'The comparison was cut off. Ask again.', { cause });
    for (const { reject } of asked.splice(0)) reject(failure);
  };
  worker.on('error', cutOff);
  worker.on('exit', () => {
    onEnd();
    cutOff();
  });
  return {
    compare: (message) =>
      new Promise((resolve, reject) => {
        asked.push({ resolve, reject });
        worker.postMessage(message);
      }),
    stop: async () => {
      await worker.terminate();
    },
  };
}
