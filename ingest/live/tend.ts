import type { PoolClient } from 'pg';
import { DecodeError } from '../decodeError.ts';
import { inClientTransaction } from '../inClientTransaction.ts';
import type { Connections } from '../queries.ts';
import { assembleStroke } from './assemble.ts';
import { readPieces, storeAndMark } from './finish.ts';
import type { LiveHeader } from './header.ts';

/** How long a stroke waits for its sender to come back. */
const KEPT_FOR = '7 days';
/** Whoever watches has long read the pieces of a stroke that is stored. */
const STORED_FOR = '1 minute';
/** One that cannot be stored as its room is now (its sides were renamed) is tried again after this. */
const AGAIN_AFTER = '1 day';

interface Abandoned {
  readonly account_id: string;
  readonly id: string;
  readonly logger_id: string;
  readonly coach_id: string;
  readonly header: LiveHeader;
}

/**
 * Removes the pieces of strokes that are stored, and stores those whose senders did not come back with what there is
 * of them, marked as cut short. Any number of processes may do it at once. Answers how many were stored.
 */
export async function tendLiveStrokes(pool: Connections): Promise<number> {
  await pool.query({ text: `delete from live_strokes where stored_at < now() - interval '${STORED_FOR}'` });
  let stored = 0;
  for (;;) {
    const outcome = await inClientTransaction(pool, storeNextAbandoned);
    if (outcome === 'none') return stored;
    if (outcome === 'stored') stored++;
  }
}

async function storeNextAbandoned(client: PoolClient): Promise<'none' | 'stored' | 'passed over'> {
  const { rows } = await client.query<Abandoned>(
    `select s.account_id, s.id, s.logger_id, r.coach_id, s.header
     from live_strokes s join rooms r on r.account_id = s.account_id and r.id = s.room_id
     where s.stored_at is null and s.touched_at < now() - interval '${KEPT_FOR}'
     order by s.touched_at limit 1 for update of s skip locked`,
  );
  if (rows.length === 0) return 'none';
  const [{ account_id: accountId, id, logger_id: loggerId, coach_id: coachId, header }] = rows;
  const stroke = read(header, await readPieces(client, accountId, id));
  if (stroke === null) {
    await client.query('delete from live_strokes where account_id = $1 and id = $2', [accountId, id]);
    return 'passed over';
  }
  const { outcome } = await storeAndMark(client, { accountId, loggerId, coachId }, id, stroke);
  if (outcome === 'stored') {
    await client.query('update strokes set cut_short = true where account_id = $1 and id = $2', [
      accountId,
      id,
    ]);
    return 'stored';
  }
  if (outcome === 'duplicate') return 'passed over';
  await client.query(
    `update live_strokes set touched_at = now() - interval '${KEPT_FOR}' + interval '${AGAIN_AFTER}'
     where account_id = $1 and id = $2`,
    [accountId, id],
  );
  return 'passed over';
}

/** Null where there is nothing in it that a stroke can be made of. */
function read(header: LiveHeader, pieces: Awaited<ReturnType<typeof readPieces>>) {
  try {
    return assembleStroke(header, pieces);
  } catch (error) {
    if (error instanceof DecodeError) return null;
    throw error;
  }
}
