import type { FastifyBaseLogger } from 'fastify';
import type { Pool } from 'pg';
import { type Database, inScope } from '../database/openDatabase.ts';
import type { AnalysisLog } from './inHand/analysisLog.ts';
import { startQueue } from './jobs/queue.ts';
import { markOutdatedRooms } from './rounds/markOutdatedRooms.ts';
import { startAnalysisThread } from './thread/startAnalysisThread.ts';

interface WorkerParts extends Pick<Database, 'pool'> {
  readonly log: FastifyBaseLogger;
  /** Told of each round of the analysis. */
  readonly done?: AnalysisLog['done'];
  /** Told of each stroke that the analysis failed on, and which it set aside. */
  readonly setAside?: () => void;
}

/**
 * Starts working on rooms, in a thread beside the one that serves requests, and on what is due by the clock. `stop`
 * has the rooms under way left, to be found by another worker or at the next start.
 */
export async function startWorker({
  pool,
  log,
  done,
  setAside,
}: WorkerParts): Promise<{ stop(): Promise<void> }> {
  await markOutdatedRooms(inScope({ pool }, { spanning: 'queue' }).db);
  // First, as it may fail, and no thread is to be left behind then.
  const queue = await startQueue({ pool, log });
  const thread = startAnalysisThread(
    { databaseUrl: urlOf(pool) },
    {
      error: (details, message) => {
        log.error(details, message);
        if (details.strokeId !== undefined) setAside?.();
      },
      done,
    },
  );
  return {
    stop: async () => {
      await Promise.all([thread.stop(), queue.stop()]);
    },
  };
}

/** The thread of the analysis has connections of its own to the same database. */
function urlOf(pool: Pool): string {
  const { connectionString } = pool.options;
  if (connectionString === undefined) throw new Error('The pool was not opened on a URL.');
  return connectionString;
}
