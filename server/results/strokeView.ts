import type { Kysely, Selectable } from 'kysely';
import { MISDATED } from '../../analysis/findings/sensorDoubt/saidOfRecord.ts';
import type { StrokeAnalysis } from '../../analysis/measures.ts';
import type { StrokeTable } from '../../migrations/strokeTables.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { notFound } from '../problems.ts';
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
    direction: row.direction ?? analysis?.direction ?? null,
    startedAt: row.started_at.toISOString(),
    placedAt: row.placed_at.toISOString(),
    placedBy: row.placed_by,
    receivedAt: row.received_at.toISOString(),
    sides: row.recorded_sides.map((side, i) => ({ side, ...sentAt(row.side_rates_hz?.[i]) })),
    hasSupply: row.has_supply,
    supply: row.has_supply ? sentAt(row.supply_rate_hz) : null,
    ambientC: row.ambient_c,
    excluded: row.excluded,
    note: row.note,
    // Written by the same program: the schema of the answer is the schema of the analysis.
    analysis: withEveryField(
      row.placed_by === 'arrival' ? misdated(analysis, row.recorded_sides) : analysis,
    ) as Stroke['analysis'],
  };
}

/** Where times were sent, and of what was stored before rates were kept, nothing is told. */
function sentAt(rateHz: number | null | undefined): { rateHz?: number } {
  return typeof rateHz === 'number' ? { rateHz } : {};
}

/**
 * Whoever reads `sides` or `share` need not ask first whether there was anything to measure. The direction of one that
 * could not be measured is the stroke's own.
 */
function withEveryField(analysis: StrokeAnalysis | null) {
  if (analysis?.status !== 'unusable') return analysis;
  const { direction, ...found } = analysis;
  return { ...found, sides: {}, share: null, lagS: null };
}

/** A date that cannot be is no fault of the samples, so the column does not know of it. */
function misdated(analysis: StrokeAnalysis | null, sides: readonly string[]): StrokeAnalysis | null {
  if (analysis === null) return null;
  const doubts = sides.map((side) => ({ side, ...MISDATED }));
  return { ...analysis, doubts: [...(analysis.doubts ?? []), ...doubts] };
}

/** A stroke of the account; to everyone else it does not exist. */
export async function findStroke(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  strokeId: string,
): Promise<Selectable<StrokeTable>> {
  return db
    .selectFrom('strokes')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('id', '=', strokeId)
    .executeTakeFirstOrThrow(() => notFound('stroke'));
}
