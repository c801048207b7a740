import type { Kysely, Selectable } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import type { LoggerTable } from '../../../migrations/thingTables.ts';
import type { AccountInScope, Scope } from '../../access/scopes/scope.ts';
import { answerPage } from '../../paging.ts';
import type { CoachOverview, OverviewQuery } from '../../schemas/overview.ts';
import { type RoomsInSight, roomStatuses } from '../roomStatuses.ts';
import { IS_SILENT } from './coachesInSight.ts';
import { type CoachRow, overviewList, overviewPage } from './overviewPage.ts';

type RoomOverview = CoachOverview['rooms'][number];
type Logger = Pick<Selectable<LoggerTable>, 'id' | 'coach_id' | 'name' | 'last_seen_at'> & {
  readonly silent: boolean;
};

/** The coaches with their rooms' verdicts and their loggers, by default in order of concern, then by name. */
export async function overview(
  db: Kysely<Tables>,
  person: Scope,
  query: OverviewQuery,
): Promise<{ items: CoachOverview[]; next: string | null }> {
  const page = await overviewPage(db, person, query);
  const accounts = [...new Set(page.rows.map((coach) => coach.account_id))];
  const parts = await Promise.all(
    accounts.map(async (accountId) => {
      const coaches = page.rows.filter((coach) => coach.account_id === accountId);
      const ids = coaches.map((coach) => coach.id);
      const [rooms, loggers] = await Promise.all([
        roomsOf(db, { accountId, byGrant: accountId !== person.accountId }, ids),
        loggersOf(db, accountId, ids),
      ]);
      return coaches.map((coach) => viewOf(coach, rooms.get(coach.id) ?? [], loggers));
    }),
  );
  const byId = new Map(parts.flat().map((coach) => [coach.id, coach]));
  const { items, next } = answerPage(
    overviewList(query),
    page,
    ({ id }) => byId.get(id),
    ({ rank, name, id }) => [rank, name, id],
  );
  return { items: items.filter((coach) => coach !== undefined), next };
}

async function roomsOf(
  db: Kysely<Tables>,
  inSight: RoomsInSight,
  coachIds: readonly string[],
): Promise<Map<string, Omit<RoomOverview, 'verdictBefore'>[]>> {
  const rooms = await db
    .selectFrom('rooms')
    .selectAll()
    .where('account_id', '=', inSight.accountId)
    .where('coach_id', 'in', coachIds)
    .orderBy('id')
    .execute();
  const statuses = await roomStatuses(db, inSight, rooms);
  const byCoach = new Map<string, Omit<RoomOverview, 'verdictBefore'>[]>();
  for (const [i, { id, name, sides, coach_id }] of rooms.entries())
    byCoach.set(coach_id, [...(byCoach.get(coach_id) ?? []), { id, name, sides, ...statuses[i] }]);
  return byCoach;
}

function loggersOf(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  coachIds: readonly string[],
): Promise<Logger[]> {
  return db
    .selectFrom('loggers as l')
    .select(['id', 'coach_id', 'name', 'last_seen_at', IS_SILENT.as('silent')])
    .where('account_id', '=', accountId)
    .where('coach_id', 'in', coachIds)
    .orderBy('id')
    .execute();
}

function viewOf(
  coach: CoachRow,
  rooms: readonly Omit<RoomOverview, 'verdictBefore'>[],
  loggers: readonly Logger[],
): CoachOverview {
  const own = loggers.filter((logger) => logger.coach_id === coach.id);
  const heard = own.flatMap((logger) => logger.last_seen_at?.getTime() ?? []);
  return {
    id: coach.id,
    name: coach.name,
    model: coach.model,
    year: coach.year,
    createdAt: coach.created_at.toISOString(),
    role: coach.role,
    lastHeardAt: heard.length === 0 ? null : new Date(Math.max(...heard)).toISOString(),
    loggers: own.map(({ id, name, last_seen_at, silent }) => ({
      id,
      name,
      lastHeardAt: last_seen_at?.toISOString() ?? null,
      silent,
    })),
    rooms: rooms.map((room) => ({ ...room, verdictBefore: coach.before[room.id] ?? null })),
  };
}
