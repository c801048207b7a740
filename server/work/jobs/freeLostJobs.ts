import type { Queries } from '../../../ingest/queries.ts';

/** Ours take seconds, or a minute or two. */
const LOST_AFTER = '15 minutes';

/**
 * Hands the jobs of workers that died, or whose word of how they ended was lost, to the others: by itself the queue waits
 * four hours for them. Every job of ours may be done twice, also at once, so a worker that is only slow does no harm.
 */
export async function freeLostJobs(queries: Queries): Promise<void> {
  await queries.query({
    text: `select graphile_worker.force_unlock_workers(array_agg(distinct locked_by))
           from graphile_worker.jobs where locked_at < now() - $1::interval having count(*) > 0`,
    values: [LOST_AFTER],
  });
}
