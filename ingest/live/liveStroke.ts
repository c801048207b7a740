import { isDeepStrictEqual } from 'node:util';
import { type Kysely, sql, type Transaction } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { strokeId } from '../strokeId.ts';
import { isUuid } from '../uuid.ts';
import type { LiveHeader } from './header.ts';
import { SampleCounts } from './samples.ts';

/** Unfinished strokes that are kept of one logger at once: twice what it may have under way, for a week of bad links. */
const MOST_UNFINISHED = 512;

/** The logger at the other end of a link, and the link's own id. */
export interface LiveSender {
  readonly accountId: string;
  readonly loggerId: string;
  readonly coachId: string;
  readonly linkId: string;
}

export type Beginning =
  | { readonly outcome: 'begun'; readonly strokeId: string }
  | {
      readonly outcome: 'resumed';
      readonly strokeId: string;
      readonly nextSeq: number;
      readonly counts: SampleCounts;
      /** The link that it was begun on before. */
      readonly tookOver: string;
    }
  | { readonly outcome: 'stored'; readonly strokeId: string }
  | { readonly outcome: 'unknown-room' | 'differs' | 'too-many' }
  | { readonly outcome: 'unknown-sides'; readonly sides: readonly string[] };

/**
 * Begins a stroke on a link, or takes up one that was begun before: from now on no other link may add to it. In a
 * transaction.
 */
export async function beginLiveStroke(
  trx: Transaction<Tables>,
  sender: LiveSender,
  header: LiveHeader,
): Promise<Beginning> {
  const { accountId, loggerId, linkId } = sender;
  // Locked first: an end under way on another link is over when the look for the stored stroke is taken.
  const row = await trx
    .selectFrom('live_strokes')
    .select(['id', 'header', 'link_id', 'next_seq', 'stored_at'])
    .where('account_id', '=', accountId)
    .where('logger_id', '=', loggerId)
    .where('key', '=', header.key)
    .forUpdate()
    .executeTakeFirst();
  const stored = await storedStroke(trx, sender, header.key);
  if (stored !== null) return { outcome: 'stored', strokeId: stored };
  // One that was stored and is known no longer went with its coach.
  if (row === undefined || row.stored_at !== null) return beginAnew(trx, sender, header, row?.id);
  if (!isDeepStrictEqual(row.header, header)) return { outcome: 'differs' };
  await trx
    .updateTable('live_strokes')
    .set({ link_id: linkId, touched_at: sql`now()` })
    .where('account_id', '=', accountId)
    .where('id', '=', row.id)
    .execute();
  return {
    outcome: 'resumed',
    strokeId: row.id,
    nextSeq: row.next_seq,
    counts: await countSamples(trx, accountId, row.id),
    tookOver: row.link_id,
  };
}

async function beginAnew(
  trx: Transaction<Tables>,
  sender: LiveSender,
  header: LiveHeader,
  leftover: string | undefined,
): Promise<Beginning> {
  const { accountId, loggerId, linkId } = sender;
  const room = await findRoom(trx, sender, header.roomId);
  if (room === undefined) return { outcome: 'unknown-room' };
  const unknown = header.sides.map(({ side }) => side).filter((side) => !room.sides.includes(side));
  if (unknown.length > 0) return { outcome: 'unknown-sides', sides: unknown };
  if (leftover !== undefined) await removeLiveStroke(trx, accountId, leftover);
  if ((await countUnfinished(trx, accountId, loggerId)) >= MOST_UNFINISHED) return { outcome: 'too-many' };
  const id = strokeId(loggerId, header.key, Date.parse(header.startedAt));
  const inserted = await trx
    .insertInto('live_strokes')
    .values({
      account_id: accountId,
      id,
      logger_id: loggerId,
      key: header.key,
      room_id: room.id,
      header: JSON.stringify(header),
      link_id: linkId,
    })
    .onConflict((conflict) => conflict.doNothing())
    .returning('id')
    .executeTakeFirst();
  // Another link of the same logger began it in this very moment: it is there now.
  return inserted === undefined ? beginLiveStroke(trx, sender, header) : { outcome: 'begun', strokeId: id };
}

async function findRoom(trx: Kysely<Tables>, { accountId, coachId }: LiveSender, roomId: string) {
  if (!isUuid(roomId)) return undefined;
  return trx
    .selectFrom('rooms')
    .select(['id', 'sides'])
    .where('account_id', '=', accountId)
    .where('id', '=', roomId)
    .where('coach_id', '=', coachId)
    .executeTakeFirst();
}

async function countUnfinished(trx: Kysely<Tables>, accountId: string, loggerId: string): Promise<number> {
  const { count } = await trx
    .selectFrom('live_strokes')
    .select((eb) => eb.fn.countAll<string>().as('count'))
    .where('account_id', '=', accountId)
    .where('logger_id', '=', loggerId)
    .where('stored_at', 'is', null)
    .executeTakeFirstOrThrow();
  return Number(count);
}

async function countSamples(trx: Kysely<Tables>, accountId: string, id: string): Promise<SampleCounts> {
  const rows = await trx
    .selectFrom('live_pieces')
    .select(['side', sql<number>`(sum(octet_length(samples)) / 8)::integer`.as('samples')])
    .where('account_id', '=', accountId)
    .where('stroke_id', '=', id)
    .groupBy('side')
    .execute();
  const counts = new SampleCounts();
  for (const { side, samples } of rows) counts.add(side, samples);
  return counts;
}

/** The id of the logger's stroke of this key among those that are stored, or were until a person removed them. */
export async function storedStroke(
  db: Kysely<Tables>,
  sender: Pick<LiveSender, 'accountId' | 'loggerId'>,
  key: string,
): Promise<string | null> {
  const { accountId, loggerId } = sender;
  const earlier = await db
    .selectFrom('strokes')
    .select('id')
    .where('account_id', '=', accountId)
    .where('sender_id', '=', loggerId)
    .where('key', '=', key)
    .unionAll(
      db
        .selectFrom('removed_strokes')
        .select('stroke_id as id')
        .where('account_id', '=', accountId)
        .where('sender_id', '=', loggerId)
        .where('key', '=', key),
    )
    .executeTakeFirst();
  return earlier?.id ?? null;
}

/** With its pieces. */
async function removeLiveStroke(db: Kysely<Tables>, accountId: string, id: string): Promise<void> {
  await db.deleteFrom('live_strokes').where('account_id', '=', accountId).where('id', '=', id).execute();
}

/** The link that may add to a stroke; null where it is gone or stored. */
export async function linkOf(db: Kysely<Tables>, accountId: string, id: string): Promise<string | null> {
  const row = await db
    .selectFrom('live_strokes')
    .select('link_id')
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .where('stored_at', 'is', null)
    .executeTakeFirst();
  return row?.link_id ?? null;
}
