import { parentPort } from 'node:worker_threads';
import { compareSpans } from '../../../analysis/compare/compareSpans.ts';
import type { FromCompareThread, ToCompareThread } from './compareMessages.ts';

/** Runs in a thread of its own and compares for `CompareThread`. It reaches nothing else. */
if (parentPort === null) throw new Error('This is to be run in a thread.');
const port = parentPort;

port.on('message', (asked: ToCompareThread) => port.postMessage(answerTo(asked)));

/** Whoever asked is told what failed. */
function answerTo({ before, after, room }: ToCompareThread): FromCompareThread {
  try {
    return { comparison: compareSpans(before, after, room) };
  } catch (failure) {
    return { failure };
  }
}
