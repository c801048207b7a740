import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { type Database, inScope } from '../database/openDatabase.ts';
import type { LoggerCaller } from './caller.ts';
import type { Token } from './tokens.ts';

/** A logger is noted as seen at most this often: a write for every stroke would cost as much as the stroke. */
const SEEN_EVERY_MS = 60_000;

/** The logger whose token this is; null when there is none. */
export async function loggerOfToken(database: Database, token: Token): Promise<LoggerCaller | null> {
  const { db } = inScope(database, { accounts: [token.accountId] });
  const found = await db
    .selectFrom('loggers')
    .select(['id', 'coach_id', 'last_seen_at'])
    .where('account_id', '=', token.accountId)
    .where('token_hash', '=', token.hash)
    .executeTakeFirst();
  if (found === undefined) return null;
  if (found.last_seen_at === null || Date.now() - found.last_seen_at.getTime() > SEEN_EVERY_MS)
    await noteSeen(db, token.accountId, found.id);
  return { kind: 'logger', accountId: token.accountId, loggerId: found.id, coachId: found.coach_id };
}

async function noteSeen(db: Kysely<Tables>, accountId: string, loggerId: string): Promise<void> {
  await db
    .updateTable('loggers')
    .set({ last_seen_at: sql`now()` })
    .where('account_id', '=', accountId)
    .where('id', '=', loggerId)
    .execute();
}
