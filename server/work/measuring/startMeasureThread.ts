import { Worker } from 'node:worker_threads';
import type { FromMeasureThread, StrokeToMeasure, ToMeasureThread } from './measureMessages.ts';

const BEGIN_AGAIN_AFTER_MS = 1000;
/** Without a word for so long while something waits, it is given up: a stroke of those it is given takes milliseconds. */
const SILENT_FOR_MS = 2000;
/** Its work is a few strokes at a time. */
const LIMITS = { maxYoungGenerationSizeMb: 8, maxOldGenerationSizeMb: 64 };

type Analyses = readonly (string | null)[];

/** Measures strokes beside the thread that serves requests. */
export interface MeasureThread {
  /** False while it begins, also again. */
  readonly isReady: boolean;
  /** How many strokes wait for it. */
  readonly waiting: number;
  /** In their order, as JSON text; null for each that it could not do. It never rejects. */
  measure(strokes: readonly StrokeToMeasure[]): Promise<Analyses>;
  stop(): Promise<void>;
}

interface Asked {
  readonly count: number;
  readonly resolve: (analyses: Analyses) => void;
}

/** Should the thread die, or hang, what waits for it is answered with nothing, and another one begins. */
export function startMeasureThread(): MeasureThread {
  const asked = new Map<number, Asked>();
  let number = 0;
  let waiting = 0;
  let isReady = false;
  let stopped = false;
  let beginning: NodeJS.Timeout | null = null;
  let silence: NodeJS.Timeout | null = null;
  let worker: Worker;

  const settle = (which: number, analyses: Analyses | null): void => {
    const one = asked.get(which);
    if (one === undefined) return;
    asked.delete(which);
    waiting -= one.count;
    one.resolve(analyses ?? Array.from({ length: one.count }, () => null));
    if (silence !== null && asked.size === 0) clearTimeout(silence);
    else silence?.refresh();
  };
  const begin = (): void => {
    const begun = new Worker(new URL('./measureEntry.mjs', import.meta.url), { resourceLimits: LIMITS });
    worker = begun;
    begun.unref();
    begun.on('message', (said: FromMeasureThread) => {
      if (said === 'ready') isReady = true;
      else settle(said.number, said.analyses);
    });
    // It ends after it, which is what counts: nothing is lost that would be worth a word.
    begun.on('error', () => undefined);
    begun.on('exit', () => {
      isReady = false;
      for (const which of [...asked.keys()]) settle(which, null);
      if (!stopped) beginning = setTimeout(begin, BEGIN_AGAIN_AFTER_MS).unref();
    });
  };
  begin();
  return {
    get isReady() {
      return isReady;
    },
    get waiting() {
      return waiting;
    },
    measure: (strokes) =>
      new Promise((resolve) => {
        const message: ToMeasureThread = { number: number++, strokes };
        asked.set(message.number, { count: strokes.length, resolve });
        waiting += strokes.length;
        if (asked.size === 1) silence = setTimeout(() => void worker.terminate(), SILENT_FOR_MS).unref();
        worker.postMessage(message);
      }),
    stop: async () => {
      stopped = true;
      if (beginning !== null) clearTimeout(beginning);
      await worker.terminate();
    },
  };
}
