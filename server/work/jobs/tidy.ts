import type { FastifyBaseLogger } from 'fastify';
import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { FAILURES_COUNT_FOR_MS } from '../../access/signIn/signIn.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { KEPT_FOR_MS } from '../../requests/createOnce.ts';
import { DELETED_FOR_DAYS } from '../../things/coaches.ts';

const EVERY_MS = 3_600_000;
const DAY_MS = 86_400_000;

/** So long it can be read what was told; a silence that was told is remembered for as long. */
const TOLD_FOR_DAYS = 60;

/**
 * Removes what has run out: sessions, tokens of scripts, links of invitations and of forgotten passwords, remembered
 * answers, counted failures, coaches that nobody restored, what was told. What cannot be removed holds up nothing else; throws
 * `AggregateError` once all else is gone. Once it is to stop, the rest is left for the next time.
 */
export async function tidy(database: Database, stopping?: AbortSignal): Promise<void> {
  const { db } = inScope(database, { spanning: 'tidying' });
  const failures: unknown[] = [];
  for (const removal of [...removals(db), ...(await coachRemovals(db))]) {
    if (stopping?.aborted) break;
    await removal().catch((error: unknown) => failures.push(error));
  }
  if (failures.length > 0) throw new AggregateError(failures, 'Not all that has run out could be removed.');
}

type Removal = () => Promise<unknown>;

function removals(db: Kysely<Tables>): Removal[] {
  return [
    ...(['sessions', 'invitations', 'password_resets'] as const).map(
      (limited) => () => db.deleteFrom(limited).where('expires_at', '<', ago(0)).execute(),
    ),
    () => db.deleteFrom('personal_tokens').where('until', '<', ago(0)).execute(),
    () => db.deleteFrom('idempotency_keys').where('created_at', '<', ago(KEPT_FOR_MS)).execute(),
    () => db.deleteFrom('sign_in_failures').where('failed_at', '<', ago(FAILURES_COUNT_FOR_MS)).execute(),
    ...(['mail_notices', 'webhook_deliveries'] as const).map(
      (told) => () =>
        db
          .deleteFrom(told)
          .where('ended_at', '<', ago(TOLD_FOR_DAYS * DAY_MS))
          .execute(),
    ),
  ];
}

/** One by one, each for as long as it takes: years of strokes go with a coach, and a whole lot may go on one day. */
async function coachRemovals(db: Kysely<Tables>): Promise<Removal[]> {
  const coaches = await db
    .selectFrom('coaches')
    .select(['account_id', 'id'])
    .where('deleted_at', '<', longDeleted())
    .execute();
  return coaches.map(
    ({ account_id, id }) =>
      () =>
        db.transaction().execute(async (trx) => {
          await sql`set local statement_timeout = 0`.execute(trx);
          await trx
            .deleteFrom('coaches')
            .where('account_id', '=', account_id)
            .where('id', '=', id)
            // It may have been restored since.
            .where('deleted_at', '<', longDeleted())
            .execute();
        }),
  );
}

function longDeleted() {
  return ago(DELETED_FOR_DAYS * DAY_MS);
}

/** By the clock of the database, which wrote the times. */
function ago(ms: number) {
  return sql<Date>`now() - make_interval(secs => ${ms / 1000})`;
}

/** Tidies at once and then every hour, until stopped; stopping lets the removal under way come to its end. */
export function startTidying(database: Database, log: FastifyBaseLogger): { stop(): Promise<void> } {
  const stopping = new AbortController();
  let running = Promise.resolve();
  const run = (): void => {
    running = running
      .then(() => tidy(database, stopping.signal))
      .catch((error: unknown) => log.warn({ err: error }, 'tidying failed'));
  };
  run();
  const timer = setInterval(run, EVERY_MS);
  return {
    stop: () => {
      clearInterval(timer);
      stopping.abort();
      return running;
    },
  };
}
