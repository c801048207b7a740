import { type Insertable, type Kysely, type Selectable, sql } from 'kysely';
import type { Warning } from '../../../analysis/warning.ts';
import type { WarningTable } from '../../../migrations/resultTables.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { markRooms } from '../../notices/markRooms.ts';
import type { FoldedHistory } from '../judging/foldHistory.ts';
import type { Place } from '../remembered/foldStart.ts';

type Removed = Pick<
  Selectable<WarningTable>,
  | 'account_id'
  | 'id'
  | 'room_id'
  | 'kind'
  | 'side'
  | 'direction'
  | 'latest_stroke_id'
  | 'opened_at'
  | 'cleared_at'
  | 'acknowledged_at'
  | 'acknowledged_by'
  | 'acknowledgement_note'
>;

interface WarningsOfRoom {
  readonly room: { readonly accountId: string; readonly roomId: string };
  readonly folded: { readonly from: Pick<Place, 'at'> | null } & Pick<FoldedHistory, 'warnings'>;
}

/**
 * Writes the warnings of the spans gone through, and removes those that no longer follow from the histories. A
 * warning that opens elsewhere now has another id: it takes over the acknowledgement of one of its room, kind and side
 * whose span overlaps its own, and whoever asks for the old id is led to it. Whoever wants to be told of a change finds the room marked for it.
 */
export async function writeWarnings(trx: Kysely<Tables>, rooms: readonly WarningsOfRoom[]): Promise<void> {
  const spans = rooms.map(({ room, folded: { from, warnings } }) => ({
    account_id: room.accountId,
    room_id: room.roomId,
    after: from?.at ?? null,
    kept: [...warnings.keys()],
  }));
  const { rows: removed } = await sql<Removed>`
    delete from warnings w
    using json_to_recordset(${JSON.stringify(spans)}::json)
      as x (account_id uuid, room_id uuid, after timestamptz, kept uuid[])
    where w.account_id = x.account_id and w.room_id = x.room_id
      and (x.after is null or w.opened_at > x.after) and w.id <> all (x.kept)
    returning w.account_id, w.id, w.room_id, w.kind, w.side, w.direction, w.opened_at, w.cleared_at, w.latest_stroke_id,
      w.acknowledged_at, w.acknowledged_by, w.acknowledgement_note
  `.execute(trx);
  // Seldom, and so by itself: as a part of the statement above it would be planned each time.
  if (removed.length > 0) await rememberFormer(trx, removed);
  const acknowledged = removed.filter((row) => row.acknowledged_at !== null);
  const rows = rooms.flatMap(({ room, folded: { warnings } }) =>
    [...warnings.values()].map((warning) => ({
      ...rowOf(warning),
      account_id: room.accountId,
      room_id: room.roomId,
      ...acknowledgementOf(
        warning,
        acknowledged.filter((row) => row.room_id === room.roomId),
      ),
    })),
  );
  if (rows.length > 0) await upsert(trx, rows);
  const changed = rooms.filter(
    ({ room, folded: { warnings } }) =>
      warnings.size > 0 || removed.some(({ room_id }) => room_id === room.roomId),
  );
  if (changed.length > 0)
    await markRooms(
      trx,
      changed.map(({ room }) => room),
    );
}

/** Keeps by what the warning that has the place of each is found, for whoever holds the old id. */
async function rememberFormer(trx: Kysely<Tables>, removed: readonly Removed[]): Promise<void> {
  await sql`
    insert into former_warnings (account_id, id, room_id, kind, side, direction, opened_at, last_at)
    select r.account_id, r.id, r.room_id, r.kind, r.side, r.direction, r.opened_at,
      greatest(r.opened_at, coalesce(r.cleared_at, s.placed_at))
    from json_to_recordset(${JSON.stringify(removed)}::json) as r (
      account_id uuid, id uuid, room_id uuid, kind text, side text, direction text, opened_at timestamptz,
      cleared_at timestamptz, latest_stroke_id uuid
    ) left join strokes s on s.account_id = r.account_id and s.id = r.latest_stroke_id
    on conflict (account_id, id) do update
      set side = excluded.side, opened_at = excluded.opened_at, last_at = excluded.last_at
  `.execute(trx);
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

function acknowledgementOf(warning: Warning, acknowledged: readonly Removed[]) {
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
