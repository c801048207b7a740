import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { SILENT_DAYS } from '../results/overview/coachesInSight.ts';
import { enqueueMail, enqueueWebhooks } from './enqueue.ts';
import type { SilentNotice } from './notice.ts';

/** A silence is told within so many days after it became one, or not at all: `tidy` forgets what was told later. */
const TOLD_WITHIN_DAYS = 7;

interface SilentRow {
  readonly account_id: string;
  readonly coach_id: string;
  readonly coach: string;
  readonly id: string;
  readonly name: string;
  readonly last_seen_at: Date | null;
  /** Since when; a logger that was never heard is silent from its beginning. */
  readonly since: Date;
}

/** Tells people and programs of loggers that fell silent, each silence once. */
export async function tellSilentLoggers(db: Kysely<Tables>, now: Date): Promise<void> {
  await tellPeople(db, now);
  await tellWebhooks(db, now);
}

async function tellPeople(db: Kysely<Tables>, now: Date): Promise<void> {
  const { rows } = await sql<SilentRow & { person_account: string; person: string; days: number }>`
    with reader as (
      select account_id, id, silent_after_days as days from people
      where silent_after_days is not null and mail_paused_at is null
    ), seen as (
      select r.account_id as person_account, r.id as person, r.days, c.account_id, c.id as coach_id, c.name as coach
      from reader r join coaches c on c.account_id = r.account_id and c.deleted_at is null
      union
      select r.account_id, r.id, r.days, c.account_id, c.id, c.name
      from reader r
      join grants g on g.person_id = r.id and (g.until is null or g.until > ${now.toISOString()}::timestamptz)
      join coaches c on c.account_id = g.account_id and c.id = g.coach_id and c.deleted_at is null
    )
    select s.*, ${LOGGER} from seen s
    join loggers l on l.account_id = s.account_id and l.coach_id = s.coach_id
    where ${fellSilent(sql`s.days`, now)} and not exists (
      select from mail_notices n
      where n.account_id = s.person_account and n.person_id = s.person and n.key = ${KEY}
    )
  `.execute(db);
  for (const row of rows) {
    const person = { accountId: row.person_account, personId: row.person };
    await enqueueMail(db, person, keyOf(row), noticeOf(row, row.days, now), now);
  }
}

async function tellWebhooks(db: Kysely<Tables>, now: Date): Promise<void> {
  const { rows } = await sql<SilentRow>`
    select c.account_id, c.id as coach_id, c.name as coach, ${LOGGER}
    from coaches c join loggers l on l.account_id = c.account_id and l.coach_id = c.id
    where c.deleted_at is null and ${fellSilent(sql`${SILENT_DAYS}::integer`, now)} and exists (
      select from webhooks w where w.account_id = c.account_id and w.enabled and 'logger.silent' = any (w.events)
        and not exists (
          select from webhook_deliveries d where d.account_id = w.account_id and d.webhook_id = w.id and d.key = ${KEY}
        )
    )
  `.execute(db);
  for (const row of rows) await enqueueWebhooks(db, keyOf(row), noticeOf(row, SILENT_DAYS, now), now);
}

const SINCE = sql`coalesce(l.last_seen_at, l.created_at)`;
const LOGGER = sql`l.id, l.name, l.last_seen_at, ${SINCE} as since`;
/** Names the silence: the next one has another beginning. */
const KEY = sql`'silent ' || l.id || ' ' || floor(extract(epoch from ${SINCE}) * 1000)::bigint`;

function keyOf({ id, since }: SilentRow): string {
  return `silent ${id} ${since.getTime()}`;
}

function fellSilent(days: ReturnType<typeof sql>, now: Date) {
  const at = sql`${now.toISOString()}::timestamptz`;
  return sql`${SINCE} <= ${at} - make_interval(days => ${days})
    and ${SINCE} > ${at} - make_interval(days => ${days} + ${TOLD_WITHIN_DAYS}::integer)`;
}

function noticeOf(row: SilentRow, days: number, now: Date): SilentNotice {
  return {
    event: 'logger.silent',
    at: now.toISOString(),
    accountId: row.account_id,
    coachId: row.coach_id,
    coach: row.coach,
    loggerId: row.id,
    logger: row.name,
    lastHeardAt: row.last_seen_at?.toISOString() ?? null,
    days,
  };
}
