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
  // Kinds, patterns, evidence and texts were written from the analysis' own types.
  const kind = row.kind as WarningKind;
  const pattern = row.pattern as SpikePattern | null;
  const evidence = row.evidence as Warning['evidence'];
  const [checks, cautions] = [row.checks as string[], row.cautions as string[]];
  return {
    id: row.id,
    roomId: row.room_id,
    kind,
    severity: row.severity,
    side: row.side,
    direction: row.direction,
    position: row.position,
    pattern,
    state: row.cleared_at ? 'cleared' : row.acknowledged_at ? 'acknowledged' : 'open',
    openedAt: (row.first_started_at ?? row.opened_at).toISOString(),
    placedAt: row.opened_at.toISOString(),
    clearedAt: row.cleared_at?.toISOString() ?? null,
    firstStrokeId: row.first_stroke_id,
    latestStrokeId: row.latest_stroke_id,
    headline: row.headline,
    evidence,
    checks,
    cautions,
    steps: checks.map((check) => ({ check, cautions: cautionsOfCheck(check) })),
    acknowledgement: row.acknowledged_at && {
      at: row.acknowledged_at.toISOString(),
      by: row.acknowledged_by_name,
      note: row.acknowledgement_note,
    },
  };
}
