import type { FastifyBaseLogger } from 'fastify';
import { Logger, run, runMigrations } from 'graphile-worker';
import type { Pool } from 'pg';
import { dropEmptyPartitions } from '../../../ingest/emptyPartitions.ts';
import { tendLiveStrokes } from '../../../ingest/live/tend.ts';
import { ensureTracePartitions } from '../../../ingest/tracePartitions.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { tellSilentLoggers } from '../../notices/tellSilentLoggers.ts';
import { writeDigests } from '../../notices/writeDigests.ts';
import { PLACE_STROKES, type PlaceStrokesPayload, placeStrokes } from '../../things/clockOffset.ts';
import { WITHDRAW_NORMALS, type WithdrawNormalsPayload } from '../../things/queueWithdrawal.ts';
import { withdrawNormals } from '../lending/withdrawNormals.ts';
import { freeLostJobs } from './freeLostJobs.ts';
import { keepRunning } from './keepRunning.ts';
import { removeTraces } from './removeTraces.ts';

/** The queue's name for the work of `ensureTracePartitions`. */
const ENSURE_PARTITIONS = 'ensure-trace-partitions';
/** The queue's name for the work of `removeTraces`, done daily, also where nothing ran at that hour. */
const REMOVE_TRACES = 'remove-traces';

/** The queue's name for the work of `tendLiveStrokes`. */
const TEND_LIVE_STROKES = 'tend-live-strokes';

/** The queue's name for what is told by the clock: digests, and loggers that fell silent. */
const TELL_BY_CLOCK = 'tell-by-clock';

/** Brings the queue's own tables up to date. */
export async function prepareQueue(pool: Pool): Promise<void> {
  await runMigrations({ pgPool: pool });
}

/** Takes up jobs that others queued and those that are due by the clock, until stopped. Rejects where it cannot begin. */
export async function startQueue({
  pool,
  log,
}: Pick<Database, 'pool'> & { readonly log: FastifyBaseLogger }): Promise<{ stop(): Promise<void> }> {
  const ofAll = inScope({ pool }, { spanning: 'queue' });
  const ensurePartitions = () =>
    ensureTracePartitions(inScope({ pool }, { spanning: 'partitions' }).pool, new Date());
  await ensurePartitions();
  const begin = () =>
    run({
      pgPool: pool,
      noHandleSignals: true,
      // Told alone, the end of a job is awaited by nobody, and the whole process dies where the database does not take it.
      preset: { worker: { completeJobBatchDelay: 0, failJobBatchDelay: 0 } },
      logger: new Logger(() => (level, message) => log[level === 'warning' ? 'warn' : level](message)),
      // The second: months to come for the samples. The third: months past.
      crontab: `*/5 * * * * ${TEND_LIVE_STROKES}
      17 3 * * * ${ENSURE_PARTITIONS}
      41 3 * * * ${REMOVE_TRACES} ?fill=2d
      7 * * * * ${TELL_BY_CLOCK}`,
      taskList: {
        // Written by `queuePlacing` and nobody else.
        [PLACE_STROKES]: (payload) => {
          const logger = payload as PlaceStrokesPayload;
          return placeStrokes(inScope({ pool }, { accounts: [logger.accountId] }).db, logger);
        },
        // Written by `queueWithdrawal` and nobody else.
        [WITHDRAW_NORMALS]: (payload) => {
          const room = payload as WithdrawNormalsPayload;
          return withdrawNormals(inScope({ pool }, { accounts: [room.accountId] }).db, room);
        },
        [TEND_LIVE_STROKES]: async () => {
          await tendLiveStrokes(ofAll.pool);
          await freeLostJobs(ofAll.pool);
        },
        [ENSURE_PARTITIONS]: ensurePartitions,
        [TELL_BY_CLOCK]: async () => {
          await tellSilentLoggers(inScope({ pool }, { spanning: 'notices' }).db, new Date());
          await writeDigests({ pool }, new Date());
        },
        [REMOVE_TRACES]: async () => {
          await removeTraces(ofAll.db, new Date());
          await dropEmptyPartitions(ofAll.pool, new Date());
        },
      },
    });
  return keepRunning(begin, log);
}
