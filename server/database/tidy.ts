import type { FastifyBaseLogger } from 'fastify';
import { sql } from 'kysely';
import { DELETED_FOR_DAYS } from '../things/coaches.ts';
import { type Database, inScope } from './openDatabase.ts';

const EVERY_MS = 3_600_000;
/** So long it can be read what was told; a silence that was told is remembered for as long. */
const TOLD_FOR_DAYS = 60;

/**
 * Removes what has run out: sessions, links of invitations and of forgotten passwords, remembered answers, counted
 * failures, coaches that nobody restored, what was told.
 */
export async function tidy(database: Database): Promise<void> {
  const { db } = inScope(database, { spanning: 'tidying' });
  for (const limited of ['sessions', 'invitations', 'password_resets'] as const)
    await db.deleteFrom(limited).where('expires_at', '<', sql<Date>`now()`).execute();
  await db
    .deleteFrom('idempotency_keys')
    .where('created_at', '<', sql<Date>`now() - interval '24 hours'`)
    .execute();
  await db
    .deleteFrom('sign_in_failures')
    .where('failed_at', '<', sql<Date>`now() - interval '15 minutes'`)
    .execute();
  await db
    .deleteFrom('coaches')
    .where('deleted_at', '<', sql<Date>`now() - make_interval(days => ${DELETED_FOR_DAYS})`)
    .execute();
  for (const told of ['mail_notices', 'webhook_deliveries'] as const)
    await db
      .deleteFrom(told)
      .where('ended_at', '<', sql<Date>`now() - make_interval(days => ${TOLD_FOR_DAYS})`)
      .execute();
}

/** Tidies at once and then every hour, until stopped; stopping lets what is under way come to its end. */
export function startTidying(database: Database, log: FastifyBaseLogger): { stop(): Promise<void> } {
  let running = Promise.resolve();
  const run = (): void => {
    running = tidy(database).catch((error: unknown) => log.warn({ err: error }, 'tidying failed'));
  };
  run();
  const timer = setInterval(run, EVERY_MS);
  return {
    stop: () => {
      clearInterval(timer);
      return running;
    },
  };
}
