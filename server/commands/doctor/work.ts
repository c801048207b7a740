import type { Pool } from 'pg';
import { WAITS } from '../../metrics/workWaiting.ts';
import { SET_ASIDE_REASONS } from '../../work/inHand/setAsideReasons.ts';
import { attend, broken, type Finding, good } from './finding.ts';

/** Work that waits longer than this is stuck rather than slow. */
const LONG_MINUTES = 10;
/** Longer than what the lot calls silent: the coach is not just parked. */
const LONG_SILENT_DAYS = 30;

/** The analysis: what waits, what fails, what was set aside; and loggers that were heard and fell silent. */
export async function examineWork(pool: Pool): Promise<Finding[]> {
  return [await waiting(pool), await failing(pool), await setAside(pool), await silent(pool)].flat();
}

async function waiting(pool: Pool): Promise<Finding> {
  const { rows } = await pool.query<{ rooms: number; late: number }>(
    `select count(*)::integer as rooms, count(*) filter (where exists (
        select from strokes s
        where s.account_id = p.account_id and s.room_id = p.room_id and s.placed_at >= p.dirty_from and ${WAITS}
          and s.received_at < now() - make_interval(mins => $1)
      ))::integer as late
    from room_progress p where p.dirty_from is not null`,
    [LONG_MINUTES],
  );
  const [{ rooms, late }] = rows;
  if (late > 0)
    return broken(
      `${late} rooms have strokes that have waited for their analysis for ${LONG_MINUTES} minutes.`,
      'Start a service or a worker; if one runs, read its log.',
    );
  return good(rooms === 0 ? 'Every stroke is analysed.' : `${rooms} rooms are being analysed.`);
}

async function failing(pool: Pool): Promise<Finding[]> {
  const known = await pool.query<{ known: boolean }>(
    "select to_regclass('graphile_worker.jobs') is not null as known",
  );
  if (!known.rows[0].known) return [];
  const { rows } = await pool.query<{ task: string; jobs: number; error: string | null }>(`
    select task_identifier as task, count(*)::integer as jobs, max(last_error) as error
    from graphile_worker.jobs where attempts >= 3 and last_error is not null group by 1 order by 1`);
  return rows.map(({ task, jobs, error }) =>
    broken(
      `${jobs} jobs "${task}" fail again and again: ${(error ?? '').slice(0, 200)}`,
      'They are tried again by themselves, ever more seldom; read the log of the worker.',
    ),
  );
}

async function setAside(pool: Pool): Promise<Finding> {
  const { rows } = await pool.query<{ strokes: number; example: string | null }>(
    `select count(*)::integer as strokes, max(id::text) as example from strokes
     where analysis ->> 'reason' = any ($1)`,
    [Object.values(SET_ASIDE_REASONS)],
  );
  const [{ strokes, example }] = rows;
  if (strokes === 0) return good('No stroke had to be set aside.');
  return attend(
    `${strokes} strokes made the analysis fail and were set aside, such as ${example}.`,
    'This is a fault of the program: report it with the trace of that stroke. Their rooms go on without them.',
  );
}

async function silent(pool: Pool): Promise<Finding[]> {
  const { rows } = await pool.query<{ loggers: number }>(
    `select count(*)::integer as loggers from loggers l
     join coaches c on c.account_id = l.account_id and c.id = l.coach_id and c.deleted_at is null
     where l.last_seen_at < now() - make_interval(days => $1)`,
    [LONG_SILENT_DAYS],
  );
  const [{ loggers }] = rows;
  if (loggers === 0) return [];
  return [
    attend(
      `${loggers} loggers have not been heard for ${LONG_SILENT_DAYS} days.`,
      'The lot page names them.',
    ),
  ];
}
