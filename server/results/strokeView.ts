import type { Kysely, Selectable } from 'kysely';
import type { StrokeAnalysis } from '../../analysis/measures.ts';
import type { StrokeTable, Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scope.ts';
import type { Stroke } from '../schemas/stroke.ts';

/** One stroke as it is answered: what was sent less its samples, and what was found. */
export function strokeView(row: Selectable<StrokeTable>): Stroke {
  // The column holds what `measureStroke` answered and nothing else.
  const analysis = row.analysis as StrokeAnalysis | null;
  return {
    id: row.id,
    roomId: row.room_id,
    loggerId: row.logger_id,
    key: row.key,
    direction: row.direction ?? (analysis?.status === 'done' ? analysis.direction : null),
    startedAt: row.started_at.toISOString(),
    receivedAt: row.received_at.toISOString(),
    sides: row.recorded_sides,
    hasSupply: row.has_supply,
    ambientC: row.ambient_c,
    excluded: row.excluded,
    note: row.note,
    // Written by the same program: the schema of the answer is the schema of the analysis.
    analysis: analysis as Stroke['analysis'],
  };
}

export function findStroke(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  strokeId: string,
): Promise<Selectable<StrokeTable> | undefined> {
  return db
    .selectFrom('strokes')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('id', '=', strokeId)
    .executeTakeFirst();
}
