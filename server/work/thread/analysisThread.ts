import { parentPort, workerData } from 'node:worker_threads';
import { openDatabase, WITHOUT_LIMITS } from '../../database/openDatabase.ts';
import type { AnalysisLog, RoundDone } from '../inHand/analysisLog.ts';
import { StrokeInHand } from '../inHand/strokeInHand.ts';
import { keepUpToDate } from '../rounds/keepUpToDate.ts';
import type { FromThread, ThreadStart, ToThread } from './threadMessages.ts';

/** Runs in a thread of its own and keeps the rooms up to date for `startAnalysisThread`, with its own connections. */
if (parentPort === null) throw new Error('This is to be run in a thread.');
const port = parentPort;
// Given by `startAnalysisThread` and nobody else.
const { databaseUrl, hand, heldUp } = workerData as ThreadStart;
/** One for the many rooms that are done together, one for those that are done one by one. */
const CONNECTIONS = 2;
// It looks for rooms of any account, and takes those of several together.
const itsOwn = { spanning: 'queue' } as const;
const { db, pool } = openDatabase(databaseUrl, CONNECTIONS, {
  patience: WITHOUT_LIMITS,
  itsOwn,
  // A server that dies takes the room's mark back with the results.
  isDerived: true,
});
const stopping = new AbortController();
const log: AnalysisLog = {
  error: ({ err, ...ids }, message) => {
    const said: FromThread = { details: { ...ids, err: plainError(err) }, message };
    port.postMessage(said);
  },
  done: (round: RoundDone) => port.postMessage(round),
};

port.on('message', (message: ToThread) => {
  if (message === 'stop') stopping.abort();
});
await keepUpToDate(db, log, stopping.signal, new StrokeInHand(hand, heldUp));
await pool.end();
port.close();

/** Without what a driver hangs on its errors, which may not be able to cross. */
function plainError(error: unknown): Error {
  if (!(error instanceof Error)) return new Error(String(error));
  const plain = new Error(error.message, error.cause === undefined ? {} : { cause: plainError(error.cause) });
  plain.name = error.name;
  plain.stack = error.stack;
  return plain;
}
