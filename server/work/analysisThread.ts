import { parentPort, workerData } from 'node:worker_threads';
import { openDatabase } from '../database/openDatabase.ts';
import { analyseRoom } from './analyseRoom.ts';
import type { AnalysisLog, FromThread, ThreadStart, ToThread } from './threadMessages.ts';

/** Runs in a thread of its own and analyses rooms for `startAnalysisThread`, with its own connections. */
if (parentPort === null) throw new Error('This is to be run in a thread.');
const port = parentPort;
// Given by `startAnalysisThread` and nobody else.
const { databaseUrl, connections } = workerData as ThreadStart;
const { db } = openDatabase(databaseUrl, connections);
const stopping = new AbortController();
const say = (message: FromThread): void => port.postMessage(message);
const log: AnalysisLog = {
  error: ({ err, strokeId }, message) => say({ type: 'log', err: plainError(err), strokeId, message }),
};

port.on('message', (message: ToThread) => {
  if (message.type === 'stop') stopping.abort();
  else if (message.type === 'end') {
    port.close();
    void db.destroy();
  } else {
    const { number, room } = message;
    analyseRoom(db, room, log, stopping.signal).then(
      (outcome) => say({ type: 'done', number, outcome }),
      (error: unknown) => say({ type: 'failed', number, error: plainError(error) }),
    );
  }
});

/** Without what a driver hangs on its errors, which may not be able to cross. */
function plainError(error: unknown): Error {
  if (!(error instanceof Error)) return new Error(String(error));
  const plain = new Error(error.message, error.cause === undefined ? {} : { cause: plainError(error.cause) });
  plain.name = error.name;
  plain.stack = error.stack;
  return plain;
}
