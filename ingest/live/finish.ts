import type { PoolClient } from 'pg';
import { inClientTransaction } from '../inClientTransaction.ts';
import type { Connections } from '../queries.ts';
import { prepareStroke, type StoreOutcome, storeStrokes } from '../storeStrokes.ts';
import type { IncomingStroke } from '../stroke.ts';
import { assembleStroke } from './assemble.ts';
import type { LiveHeader } from './header.ts';
import type { LiveSender } from './liveStroke.ts';

/** `gone`: the stroke is not this link's to end. */
export type Ending = StoreOutcome | { readonly outcome: 'gone' };

/**
 * Stores a stroke under way as a whole one. Its pieces and what they became change in one transaction: whenever the
 * service dies, the stroke is there once, whole or in pieces. Throws `DecodeError` where it cannot be a stroke.
 */
export function endLiveStroke(pool: Connections, sender: LiveSender, id: string): Promise<Ending> {
  return inClientTransaction(pool, async (client) => {
    const { rows } = await client.query<{ header: LiveHeader }>(
      `select header from live_strokes
       where account_id = $1 and id = $2 and link_id = $3 and stored_at is null for update`,
      [sender.accountId, id, sender.linkId],
    );
    if (rows.length === 0) return { outcome: 'gone' };
    const stroke = assembleStroke(rows[0].header, await readPieces(client, sender.accountId, id));
    return storeAndMark(client, sender, id, stroke);
  });
}

/** What is stored is kept in pieces for a moment, for those who watch it; `tendLiveStrokes` removes it. */
export async function storeAndMark(
  client: PoolClient,
  sender: Pick<LiveSender, 'accountId' | 'loggerId' | 'coachId'>,
  id: string,
  stroke: IncomingStroke,
): Promise<StoreOutcome> {
  const { accountId, loggerId, coachId } = sender;
  const [outcome] = await storeStrokes(client, [
    prepareStroke({ accountId, senderId: loggerId, loggerId, coachId }, stroke),
  ]);
  if (outcome.outcome === 'stored' || outcome.outcome === 'duplicate') {
    await client.query('update live_strokes set stored_at = now() where account_id = $1 and id = $2', [
      accountId,
      id,
    ]);
  }
  return outcome;
}

export async function readPieces(client: PoolClient, accountId: string, id: string) {
  const { rows } = await client.query<{ side: number | null; samples: Buffer }>(
    'select side, samples from live_pieces where account_id = $1 and stroke_id = $2 order by seq',
    [accountId, id],
  );
  return rows;
}
