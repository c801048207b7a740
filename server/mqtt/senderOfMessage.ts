import { loggerHolding } from '../access/callers/loggerTokens.ts';
import type { LoggerCaller } from '../access/scopes/caller.ts';
import { readToken } from '../access/tokens/tokens.ts';
import { type Database, inScope } from '../database/openDatabase.ts';
import { notSignedIn, ProblemError } from '../problems.ts';

/**
 * The logger that sent a message: by the token in it, which must be that of the logger in the topic; or by the topic
 * alone where the broker lets each account publish under its own id only. Throws the 401 problem for all others.
 */
export async function senderOfMessage(
  database: Database,
  loggerId: string,
  token: string | null,
  trustTopic: boolean,
): Promise<LoggerCaller> {
  if (token === null && !trustTopic)
    throw new ProblemError('not-signed-in', 'Send the token of the logger beside its strokes.');
  const sender =
    token === null ? await loggerById(database, loggerId) : await loggerHolding(database, readToken(token));
  if (sender?.loggerId !== loggerId) throw notSignedIn();
  return sender;
}

/** An id is of one account: ids are random. */
async function loggerById(database: Database, id: string): Promise<LoggerCaller | null> {
  const { db } = inScope(database, { spanning: 'broker' });
  const found = await db
    .selectFrom('loggers')
    .select(['account_id', 'coach_id'])
    .where('id', '=', id)
    .executeTakeFirst();
  if (found === undefined) return null;
  return { kind: 'logger', accountId: found.account_id, loggerId: id, coachId: found.coach_id };
}
