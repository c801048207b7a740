import type { Kysely, Selectable, Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import type { Tables } from '../../migrations/tables.ts';
import type { LoggerTable } from '../../migrations/thingTables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { newToken } from '../access/tokens/tokens.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { type PageAsked, pageById } from '../paging.ts';
import { notFound } from '../problems.ts';
import type { Logger, LoggerBody, LoggerPatch } from '../schemas/logger.ts';
import { placeStrokes, queuePlacing } from './clockOffset.ts';
import { holdCoach } from './coaches.ts';

type LoggerRow = Selectable<LoggerTable>;

export function loggerOf(row: LoggerRow): Logger {
  return {
    id: row.id,
    coachId: row.coach_id,
    name: row.name,
    sensor: row.sensor,
    clockOffsetS: row.clock_offset_s,
    lastSeenAt: row.last_seen_at?.toISOString() ?? null,
    createdAt: row.created_at.toISOString(),
    updatedAt: row.updated_at.toISOString(),
  };
}

/** The token is answered here and nowhere else: only its hash is kept. */
export async function createLogger(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  coachId: string,
  body: LoggerBody,
): Promise<Logger & { token: string }> {
  await holdCoach(trx, accountId, coachId);
  const token = newToken('logger', accountId);
  const row = await trx
    .insertInto('loggers')
    .values({ account_id: accountId, id: newId(), coach_id: coachId, token_hash: token.hash, ...body })
    .returningAll()
    .executeTakeFirstOrThrow();
  return { ...loggerOf(row), token: token.text };
}

export async function findLogger(db: Kysely<Tables>, accountId: AccountInScope, id: string): Promise<Logger> {
  const row = await db
    .selectFrom('loggers')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .executeTakeFirstOrThrow(() => notFound('logger'));
  return loggerOf(row);
}

/** In the order in which they were created. */
export function listLoggers(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  coachId: string,
  asked: PageAsked,
) {
  const query = db
    .selectFrom('loggers')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('coach_id', '=', coachId);
  return pageById(query, { list: `loggers/${coachId}`, ...asked }, loggerOf);
}

/** Changes a logger. With another offset of its clock, its strokes stand in their new places when this answers. */
export async function changeLogger(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  id: string,
  { clockOffsetS, ...change }: LoggerPatch,
): Promise<Logger> {
  const logger = await inTransaction(db, async (trx) => {
    const row = await trx
      .updateTable('loggers')
      .set({ ...change, updated_at: new Date() })
      .$if(clockOffsetS !== undefined, (query) => query.set({ clock_offset_s: clockOffsetS }))
      .where('account_id', '=', accountId)
      .where('id', '=', id)
      .returningAll()
      .executeTakeFirstOrThrow(() => notFound('logger'));
    if (clockOffsetS !== undefined) await queuePlacing(trx, accountId, id);
    return loggerOf(row);
  });
  if (clockOffsetS !== undefined) await placeStrokes(db, { accountId, loggerId: id });
  return logger;
}

/** Its token is worth nothing from now on; the strokes that it sent stay. */
export async function removeLogger(db: Kysely<Tables>, accountId: AccountInScope, id: string): Promise<void> {
  await db
    .deleteFrom('loggers')
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .returning('id')
    .executeTakeFirstOrThrow(() => notFound('logger'));
}
