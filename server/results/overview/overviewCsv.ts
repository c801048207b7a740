import type { Kysely } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import type { Scope } from '../../access/scopes/scope.ts';
import { csvTable } from '../../csvTable.ts';
import type { CoachOverview, OverviewQuery } from '../../schemas/overview.ts';
import { overview } from './overview.ts';

const COACHES_AT_A_TIME = 500;

const COLUMNS = [
  'coach',
  'model',
  'year',
  'room',
  'verdict',
  'verdictBefore',
  'headline',
  'openWarnings',
  'strokes',
  'lastStrokeAt',
  'lastHeardAt',
  'silentLoggers',
] as const;

type Row = Partial<Record<(typeof COLUMNS)[number], string | number | null>>;

/** Every coach that the query asks for as a table, a row a room. */
export async function overviewCsv(db: Kysely<Tables>, person: Scope, query: OverviewQuery): Promise<string> {
  const rows: Row[] = [];
  let cursor: string | undefined;
  do {
    const page = await overview(db, person, { ...query, limit: COACHES_AT_A_TIME, cursor });
    rows.push(...page.items.flatMap(rowsOf));
    cursor = page.next ?? undefined;
  } while (cursor !== undefined);
  return csvTable(COLUMNS, rows);
}

/** A coach without rooms has a row all the same. */
function rowsOf(coach: CoachOverview): Row[] {
  const own = {
    coach: coach.name,
    model: coach.model,
    year: coach.year,
    lastHeardAt: coach.lastHeardAt,
    silentLoggers: coach.loggers.filter((logger) => logger.silent).length,
  };
  if (coach.rooms.length === 0) return [own];
  return coach.rooms.map((room) => ({
    ...own,
    room: room.name,
    verdict: room.verdict,
    verdictBefore: room.verdictBefore,
    headline: room.headline,
    openWarnings: room.openWarnings,
    strokes: room.strokes,
    lastStrokeAt: room.lastStrokeAt,
  }));
}
