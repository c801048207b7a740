import type { Selectable } from 'kysely';
import { cautionsOfCheck } from '../../analysis/advice/checks.ts';
import type { SpikePattern, WarningKind } from '../../analysis/warning.ts';
import type { WarningTable } from '../../migrations/resultTables.ts';
import type { Warning } from '../schemas/results.ts';

export type WarningRow = Selectable<WarningTable> & {
  /** The name of whoever acknowledged it. */
  readonly acknowledged_by_name: string | null;
  /** What its logger said when the stroke that raised it began; null: that stroke was removed just now. */
  readonly first_started_at: Date | null;
};

export function warningView(row: WarningRow): Warning {
  return {
    id: row.id,
    roomId: row.room_id,
    // Kinds, patterns and texts were written from the analysis' own types.
    kind: row.kind as WarningKind,
    severity: row.severity,
    side: row.side,
    direction: row.direction,
    position: row.position,
    pattern: row.pattern as SpikePattern | null,
    state: row.cleared_at ? 'cleared' : row.acknowledged_at ? 'acknowledged' : 'open',
    openedAt: (row.first_started_at ?? row.opened_at).toISOString(),
    placedAt: row.opened_at.toISOString(),
    clearedAt: row.cleared_at?.toISOString() ?? null,
    firstStrokeId: row.first_stroke_id,
    latestStrokeId: row.latest_stroke_id,
    headline: row.headline,
    evidence: row.evidence as Warning['evidence'],
    checks: row.checks as string[],
    cautions: row.cautions as string[],
    steps: (row.checks as string[]).map((check) => ({ check, cautions: cautionsOfCheck(check) })),
    acknowledgement: row.acknowledged_at && {
      at: row.acknowledged_at.toISOString(),
      by: row.acknowledged_by_name,
      note: row.acknowledgement_note,
    },
  };
}
