import { Worker } from 'node:worker_threads';
import type { AnalysisLog } from '../inHand/analysisLog.ts';
import { StrokeInHand } from '../inHand/strokeInHand.ts';
import { threadEnd } from './threadEnd.ts';
import type { FromThread, ThreadStart, ToThread } from './threadMessages.ts';

const BEGIN_AGAIN_AFTER_MS = 1000;
/** One that has a stroke in hand for longer is ended: its room is found unfinished at the next start. */
const STOP_WITHIN_MS = 4000;
/** The largest stroke that may be sent takes seconds, also where the machine is busy. */
const STUCK_AFTER_MS = 120_000;

/** Keeps rooms up to date in a thread of its own, so that no request waits for a calculation. */
interface AnalysisThread {
  /** Leaves the rooms under way, to be found by the next one, and closes the thread and its connections. */
  stop(): Promise<void>;
}

interface AnalysisThreadOptions {
  readonly databaseUrl: string;
  /** A stroke that is in hand for longer is set aside. */
  readonly stuckAfterMs?: number;
}

/**
 * Should the thread ever die, another one begins. A stroke over which it died, or that it does not come to an end
 * with, is set aside by the next: else its room, and all others, would wait for it for ever.
 */
export function startAnalysisThread(
  { databaseUrl, stuckAfterMs = STUCK_AFTER_MS }: AnalysisThreadOptions,
  log: AnalysisLog,
): AnalysisThread {
  const heldUp = new Set<string>();
  let stopped = false;
  let worker: Worker | null = null;
  let waiting: NodeJS.Timeout | null = null;
  const begin = (): void => {
    const hand = new StrokeInHand();
    const start: ThreadStart = { databaseUrl, hand: hand.memory, heldUp: [...heldUp] };
    const begun = new Worker(new URL('./threadEntry.mjs', import.meta.url), { workerData: start });
    worker = begun;
    const stopWatching = watch(hand, stuckAfterMs, () => void begun.terminate());
    begun.on('message', (said: FromThread) => {
      if ('seconds' in said) log.done?.(said);
      else log.error(said.details, said.message);
    });
    begun.on('error', (err) => log.error({ err }, 'The thread of the analysis died.'));
    begun.on('exit', () => {
      stopWatching();
      worker = null;
      if (stopped) return;
      const left = hand.read();
      if (left !== null) heldUp.add(left.strokeId);
      waiting = setTimeout(begin, BEGIN_AGAIN_AFTER_MS);
    });
  };
  begin();
  return {
    async stop() {
      stopped = true;
      if (waiting !== null) clearTimeout(waiting);
      if (worker === null) return;
      const leaving = worker;
      const gone = threadEnd(leaving);
      leaving.postMessage('stop' satisfies ToThread);
      const timer = setTimeout(() => void leaving.terminate(), STOP_WITHIN_MS);
      await gone;
      clearTimeout(timer);
    },
  };
}

/** Calls back, once, where the very same work on a stroke goes on for so long; answers how to stop looking. */
function watch(hand: StrokeInHand, stuckAfterMs: number, onStuck: () => void): () => void {
  let since = { count: 0, atMs: performance.now() };
  const timer = setInterval(
    () => {
      const count = hand.read()?.count ?? 0;
      const atMs = performance.now();
      if (count === 0 || count !== since.count) since = { count, atMs };
      else if (atMs - since.atMs >= stuckAfterMs) {
        clearInterval(timer);
        onStuck();
      }
    },
    Math.max(10, stuckAfterMs / 4),
  );
  return () => clearInterval(timer);
}
