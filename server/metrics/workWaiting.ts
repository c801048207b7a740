import type { FastifyBaseLogger } from 'fastify';
import type { Queries } from '../../ingest/queries.ts';

/** The work that the analysis has not done yet, in all accounts together. */
export type WorkWaiting = {
  readonly rooms: number;
  /** How long its oldest stroke has waited, seconds; 0 where none does. */
  readonly oldestS: number;
};

/** SQL of a row of `strokes as s`: it may have been measured before it was stored, and not gone through yet. */
export const WAITS = `(s.analysis is null or s.analysis ->> 'status' = 'done' and not exists (
  select from measures m where m.account_id = s.account_id and m.stroke_id = s.id
))`;

const KEPT_FOR_MS = 5000;

/**
 * Answers how much waits, asking the database at most every five seconds, however often it is read. While the
 * database does not answer, what it said last stands: the pool's own figures tell of that trouble.
 */
export function workWaiting(
  pool: Queries,
  log: FastifyBaseLogger,
  now: () => number = () => performance.now(),
): () => Promise<WorkWaiting> {
  let last: WorkWaiting = { rooms: 0, oldestS: 0 };
  let askedAt = Number.NEGATIVE_INFINITY;
  let asking: Promise<void> | null = null;
  const ask = async (): Promise<void> => {
    try {
      const { rows } = await pool.query<WorkWaiting>({
        text: `
        select count(*)::integer as rooms,
          coalesce(extract(epoch from now() - min((
            select min(s.received_at) from strokes s
            where s.account_id = p.account_id and s.room_id = p.room_id and s.placed_at >= p.dirty_from
              and ${WAITS}
          ))), 0)::double precision as "oldestS"
        from room_progress p where p.dirty_from is not null`,
      });
      last = rows[0];
    } catch (error) {
      log.warn({ err: error }, 'what waits for its analysis cannot be counted');
    } finally {
      askedAt = now();
      asking = null;
    }
  };
  return async () => {
    if (asking === null && now() - askedAt >= KEPT_FOR_MS) asking = ask();
    await asking;
    return last;
  };
}
