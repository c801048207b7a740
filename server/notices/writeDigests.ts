import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { accountInScope, type Scope } from '../access/scopes/scope.ts';
import { type Database, inScope } from '../database/openDatabase.ts';
import { overview } from '../results/overview/overview.ts';
import { overviewSummary } from '../results/overview/overviewSummary.ts';
import { enqueueMail } from './enqueue.ts';
import type { DigestNotice } from './notice.ts';

const WEEK_MS = 7 * 86_400_000;
const FROM_HOUR = 7;
const MOST_ROOMS = 20;

/** On Mondays, from seven in the morning where the person is, writes the week of every dealer who wants it. */
export async function writeDigests(database: Pick<Database, 'pool'>, now: Date): Promise<void> {
  const { db } = inScope(database, { spanning: 'notices' });
  const dealers = await db
    .selectFrom('people')
    .select(['account_id', 'id', 'time_zone'])
    .where('digest', '=', true)
    .where('role', '=', 'dealer')
    .where('mail_paused_at', 'is', null)
    .execute();
  for (const { account_id, id, time_zone } of dealers) {
    const monday = mondayOf(now, time_zone ?? 'UTC');
    if (monday === null) continue;
    const person = { accountId: account_id, personId: id };
    const key = `digest ${monday}`;
    if (await isWritten(db, person, key)) continue;
    await enqueueMail(db, person, key, await weekOf(database, db, person, now), now);
  }
}

/** The date where it is Monday morning or later that day, else null. */
function mondayOf(now: Date, timeZone: string): string | null {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    weekday: 'short',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(now);
  const of = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  if (of('weekday') !== 'Mon' || Number(of('hour')) < FROM_HOUR) return null;
  return `${of('year')}-${of('month')}-${of('day')}`;
}

interface Who {
  readonly accountId: string;
  readonly personId: string;
}

async function isWritten(db: Kysely<Tables>, { accountId, personId }: Who, key: string): Promise<boolean> {
  const { rows } = await sql`
    select from mail_notices where account_id = ${accountId} and person_id = ${personId} and key = ${key}
  `.execute(db);
  return rows.length > 0;
}

/** As the dealer's own list of coaches would show it, in its own scope. */
async function weekOf(
  database: Pick<Database, 'pool'>,
  spanning: Kysely<Tables>,
  { accountId, personId }: Who,
  now: Date,
): Promise<DigestNotice> {
  const own = accountInScope(accountId);
  const { db } = inScope(database, { accounts: [own] });
  const dealer: Scope = { kind: 'person', accountId: own, personId, role: 'dealer', visits: [] };
  const since = new Date(now.getTime() - WEEK_MS).toISOString();
  const summary = await overviewSummary(db, dealer, since);
  const { items } = await overview(db, dealer, { sort: 'concern', limit: MOST_ROOMS });
  const { rows: troubled } = await sql<{ url: string }>`
    select url from webhooks where account_id = ${accountId} and (disabled_because is not null or failures > 0)
  `.execute(spanning);
  const paused = await spanning
    .selectFrom('people')
    .select('email')
    .where('account_id', '=', accountId)
    .where('mail_paused_at', 'is not', null)
    .execute();
  const { worse, better, cleared } = summary.changes ?? { worse: 0, better: 0, cleared: 0 };
  return {
    event: 'digest',
    at: now.toISOString(),
    rooms: summary.rooms,
    changes: { worse, better, cleared },
    silentLoggers: summary.silentLoggers,
    worst: items
      .flatMap((coach) =>
        coach.rooms.flatMap(({ id, name, verdict, headline }) =>
          verdict === 'stop' || verdict === 'service'
            ? [{ roomId: id, room: name, coach: coach.name, verdict, headline }]
            : [],
        ),
      )
      .slice(0, MOST_ROOMS),
    troubledWebhooks: troubled.map(({ url }) => url),
    paused: paused.map(({ email }) => email),
  };
}
