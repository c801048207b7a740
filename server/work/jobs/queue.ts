import type { FastifyBaseLogger } from 'fastify';
import { Logger, run, runMigrations } from 'graphile-worker';
import { type Kysely, sql } from 'kysely';
import type { Pool } from 'pg';
import { ANALYSIS_VERSION } from '../../../analysis/room/fold.ts';
import { dropEmptyPartitions } from '../../../ingest/emptyPartitions.ts';
import { tendLiveStrokes } from '../../../ingest/live/tend.ts';
import { BEGINNING, HAS_TRACE } from '../../../ingest/roomProgress.ts';
import { ensureTracePartitions } from '../../../ingest/tracePartitions.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { inTransaction } from '../../database/inTransaction.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { writeDigests } from '../../notices/digests.ts';
import { tellSilentLoggers } from '../../notices/silentLoggers.ts';
import { PLACE_STROKES, type PlaceStrokesPayload, placeStrokes } from '../../things/clockOffset.ts';
import {
  WITHDRAW_NORMALS,
  type WithdrawNormalsPayload,
  withdrawNormals,
} from '../lending/withdrawNormals.ts';
import { startAnalysisThread } from '../thread/startAnalysisThread.ts';
import type { AnalysisLog } from '../thread/threadMessages.ts';
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

export interface WorkerParts extends Pick<Database, 'pool'> {
  readonly log: FastifyBaseLogger;
  /** Told of each round of the analysis. */
  readonly done?: AnalysisLog['done'];
  /** Told of each stroke that the analysis failed on, and which it set aside. */
  readonly setAside?: () => void;
}

/** Brings the queue's own tables up to date. */
export async function prepareQueue(pool: Pool): Promise<void> {
  await runMigrations({ pgPool: pool });
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
  const ofAll = inScope({ pool }, { spanning: 'queue' });
  const { db } = ofAll;
  const ensurePartitions = () =>
    ensureTracePartitions(inScope({ pool }, { spanning: 'partitions' }).pool, new Date());
  await ensurePartitions();
  await markOutdatedRooms(db);
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
          await removeTraces(db, new Date());
          await dropEmptyPartitions(ofAll.pool, new Date());
        },
      },
    });
  const runner = await keepRunning(begin, log);
  return {
    stop: async () => {
      await Promise.all([thread.stop(), runner.stop()]);
    },
  };
}

/** The thread of the analysis has connections of its own to the same database. */
function urlOf(pool: Pool): string {
  const { connectionString } = pool.options;
  if (connectionString === undefined) throw new Error('The pool was not opened on a URL.');
  return connectionString;
}

/**
 * Rooms whose results were made by another version of the analysis are made anew from their beginning; strokes whose
 * samples are no longer kept stay as they were measured.
 */
async function markOutdatedRooms(db: Kysely<Tables>): Promise<void> {
  await inTransaction(db, async (trx) => {
    // Every stroke of every room, once a version.
    await sql`set local statement_timeout = 0`.execute(trx);
    const { rows } = await sql<{ account_id: string; room_id: string }>`
      with outdated as (
        select p.account_id, p.room_id from room_progress p
        where exists (
          select from room_checkpoints c
          where c.account_id = p.account_id and c.room_id = p.room_id and c.analysis_version <> ${ANALYSIS_VERSION}
        )
        order by p.account_id, p.room_id for update
      )
      update room_progress p set dirty_from = ${BEGINNING.toISOString()}::timestamptz, revision = p.revision + 1,
        measured_by = null
      from outdated o where o.account_id = p.account_id and o.room_id = p.room_id
      returning p.account_id, p.room_id
    `.execute(trx);
    await sql`
      update strokes s set analysis = null
      from unnest(
        ${rows.map((row) => row.account_id)}::uuid[], ${rows.map((row) => row.room_id)}::uuid[]
      ) as m (account_id, room_id)
      where s.account_id = m.account_id and s.room_id = m.room_id and ${HAS_TRACE}
    `.execute(trx);
  });
}
