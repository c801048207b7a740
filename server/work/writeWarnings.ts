import { type Insertable, type Kysely, type Selectable, sql } from 'kysely';
import type { Warning } from '../../analysis/warning.ts';
import type { Tables, WarningTable } from '../../migrations/tables.ts';
import type { FoldedHistory } from './foldHistory.ts';

type Acknowledged = Pick<
  Selectable<WarningTable>,
  | 'kind'
  | 'side'
  | 'opened_at'
  | 'cleared_at'
  | 'acknowledged_at'
  | 'acknowledged_by'
  | 'acknowledgement_note'
>;

/**
 * Writes the warnings of the span gone through, and removes those that no longer follow from the history. A warning
 * that opens elsewhere now has another id: it takes over the acknowledgement of one of its kind and side whose span
 * overlaps its own.
 */
export async function writeWarnings(
  trx: Kysely<Tables>,
  accountId: string,
  roomId: string,
  { from, warnings }: FoldedHistory,
): Promise<void> {
  const removed = await trx
    .deleteFrom('warnings')
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .$if(from !== null, (query) => query.where('opened_at', '>', from?.at ?? new Date(0)))
    .where(sql<boolean>`id <> all(${[...warnings.keys()]}::uuid[])`)
    .returning([
      'kind',
      'side',
      'opened_at',
      'cleared_at',
      'acknowledged_at',
      'acknowledged_by',
      'acknowledgement_note',
    ])
    .execute();
  if (warnings.size === 0) return;
  const acknowledged = removed.filter((row) => row.acknowledged_at !== null);
  await upsert(
    trx,
    [...warnings.values()].map((warning) => ({
      ...rowOf(warning),
      account_id: accountId,
      room_id: roomId,
      ...acknowledgementOf(warning, acknowledged),
    })),
  );
}

async function upsert(trx: Kysely<Tables>, rows: readonly Insertable<WarningTable>[]): Promise<void> {
  await trx
    .insertInto('warnings')
    .values(rows)
    .onConflict((conflict) =>
      conflict.columns(['account_id', 'id']).doUpdateSet((set) => ({
        severity: set.ref('excluded.severity'),
        side: set.ref('excluded.side'),
        direction: set.ref('excluded.direction'),
        position: set.ref('excluded.position'),
        pattern: set.ref('excluded.pattern'),
        opened_at: set.ref('excluded.opened_at'),
        cleared_at: set.ref('excluded.cleared_at'),
        first_stroke_id: set.ref('excluded.first_stroke_id'),
        latest_stroke_id: set.ref('excluded.latest_stroke_id'),
        headline: set.ref('excluded.headline'),
        evidence: set.ref('excluded.evidence'),
        checks: set.ref('excluded.checks'),
        cautions: set.ref('excluded.cautions'),
        // A person's own acknowledgement of this very warning goes first.
        acknowledged_at: sql`coalesce(warnings.acknowledged_at, excluded.acknowledged_at)`,
        acknowledged_by: sql`case when warnings.acknowledged_at is null then excluded.acknowledged_by
          else warnings.acknowledged_by end`,
        acknowledgement_note: sql`case when warnings.acknowledged_at is null then excluded.acknowledgement_note
          else warnings.acknowledgement_note end`,
      })),
    )
    .execute();
}

function rowOf(warning: Warning) {
  return {
    id: warning.id,
    kind: warning.kind,
    severity: warning.severity,
    side: warning.side,
    direction: warning.direction,
    position: warning.position,
    pattern: warning.pattern,
    opened_at: new Date(warning.openedAtMs),
    cleared_at: warning.clearedAtMs === null ? null : new Date(warning.clearedAtMs),
    first_stroke_id: warning.firstStrokeId,
    latest_stroke_id: warning.latestStrokeId,
    headline: warning.headline,
    evidence: JSON.stringify(warning.evidence),
    checks: JSON.stringify(warning.checks),
    cautions: JSON.stringify(warning.cautions),
  };
}

function acknowledgementOf(warning: Warning, acknowledged: readonly Acknowledged[]) {
  const before = acknowledged.find(
    (row) =>
      row.kind === warning.kind &&
      row.side === warning.side &&
      row.opened_at.getTime() <= (warning.clearedAtMs ?? Number.POSITIVE_INFINITY) &&
      (row.cleared_at === null || row.cleared_at.getTime() >= warning.openedAtMs),
  );
  return {
    acknowledged_at: before?.acknowledged_at ?? null,
    acknowledged_by: before?.acknowledged_by ?? null,
    acknowledgement_note: before?.acknowledgement_note ?? null,
  };
}
