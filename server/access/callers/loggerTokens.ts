import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { gathered } from '../../database/gathered.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { notSignedIn } from '../../problems.ts';
import type { LoggerCaller } from '../scopes/caller.ts';
import { isToBeNoted } from '../tokens/isToBeNoted.ts';
import type { Token } from '../tokens/tokens.ts';

/** For each pool one gatherer: a logger sends many strokes at once, and many loggers send in the same evening. */
const lookUps = new WeakMap<Database['pool'], (token: Token) => Promise<LoggerCaller | null>>();

/** The logger whose token this is; null when there is none. */
export function loggerOfToken(database: Database, token: Token): Promise<LoggerCaller | null> {
  let lookUp = lookUps.get(database.pool);
  if (lookUp === undefined) {
    lookUp = gathered((tokens) => loggersOfTokens(database, tokens));
    lookUps.set(database.pool, lookUp);
  }
  return lookUp(token);
}

/** The logger who holds the token. Throws the 401 problem for a person's, and for one that is none or over. */
export async function loggerHolding(database: Database, token: Token | null): Promise<LoggerCaller> {
  const logger = token?.kind === 'logger' ? await loggerOfToken(database, token) : null;
  if (logger === null) throw notSignedIn();
  return logger;
}

interface Row {
  readonly account_id: string;
  readonly id: string;
  readonly coach_id: string;
  readonly token_hash: Buffer;
  readonly last_seen_at: Date | null;
}

/** It comes with nearly every stroke: planning it each time takes as long as a third of the storing. */
const LOGGERS_OF_TOKENS = `
  select l.account_id, l.id, l.coach_id, l.token_hash, l.last_seen_at
  from unnest($1::uuid[], $2::bytea[]) as t (account_id, token_hash)
  join loggers l on l.account_id = t.account_id and l.token_hash = t.token_hash
  -- Of a deleted coach, which is out of sight, it is nobody's: on 401 a logger keeps its strokes, and it may come back.
  join coaches c on c.account_id = l.account_id and c.id = l.coach_id`;

async function loggersOfTokens(
  database: Database,
  tokens: readonly Token[],
): Promise<(LoggerCaller | null)[]> {
  const { db, pool } = inScope(database, { accounts: tokens.map(({ accountId }) => accountId) });
  const distinct = [...new Map(tokens.map((token) => [nameOf(token.accountId, token.hash), token])).values()];
  const { rows } = await pool.query<Row>({
    name: 'loggers-of-tokens',
    text: LOGGERS_OF_TOKENS,
    values: [distinct.map(({ accountId }) => accountId), distinct.map(({ hash }) => hash)],
  });
  const unseen = rows.filter(({ last_seen_at }) => isToBeNoted(last_seen_at));
  if (unseen.length > 0) await noteSeen(db, unseen);
  const found = new Map(rows.map((row) => [nameOf(row.account_id, row.token_hash), row]));
  return tokens.map(({ accountId, hash }) => {
    const row = found.get(nameOf(accountId, hash));
    return row ? { kind: 'logger', accountId, loggerId: row.id, coachId: row.coach_id } : null;
  });
}

function nameOf(accountId: string, hash: Buffer): string {
  return `${accountId} ${hash.toString('base64')}`;
}

/**
 * Passes over those that somebody else holds, as another process that notes the same loggers in another order: no sender
 * waits for that, and it is heard again soon.
 */
async function noteSeen(db: Kysely<Tables>, loggers: readonly Row[]): Promise<void> {
  await sql`
    with free as (
      select l.account_id, l.id
      from unnest(
        ${loggers.map((row) => row.account_id)}::uuid[], ${loggers.map((row) => row.id)}::uuid[]
      ) as s (account_id, id)
      join loggers l on l.account_id = s.account_id and l.id = s.id
      for no key update of l skip locked
    )
    update loggers l set last_seen_at = now() from free f where l.account_id = f.account_id and l.id = f.id
  `.execute(db);
}
