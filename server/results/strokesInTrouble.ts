import type { Kysely } from 'kysely';
import type { StrokeEvent } from '../../analysis/history.ts';
import { DIRECTIONS } from '../../analysis/trace.ts';
import type { WarningKind } from '../../analysis/warning.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';

/** What no work on a room mends. */
export const NOT_OF_THE_ROOM: readonly WarningKind[] = ['weak-supply', 'sensor-doubt'];
const ENOUGH = 2;

interface BeforeWork {
  readonly strokes: readonly StrokeEvent[];
  /** The warning that they begin with; null: they go back as far as strokes or other work do. */
  readonly since: WarningKind | null;
}

/**
 * Of the strokes before some work those that it was done for: where a warning stood at its time, the strokes from that
 * warning on. The strokes of healthy days before it would hide what the work has mended. Of several warnings it is the
 * latest that leaves two strokes in each direction which had two.
 */
export async function strokesInTrouble(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  workAt: Date,
  before: readonly StrokeEvent[],
): Promise<BeforeWork> {
  const warnings = await db
    .selectFrom('warnings')
    .select(['opened_at', 'kind'])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('opened_at', '<', workAt)
    .where((where) => where.or([where('cleared_at', 'is', null), where('cleared_at', '>=', workAt)]))
    .where('kind', 'not in', NOT_OF_THE_ROOM)
    .orderBy('opened_at', 'desc')
    // Of two that one stroke raised always the same one is told.
    .orderBy('kind')
    .execute();
  for (const { opened_at: openedAt, kind } of warnings) {
    const strokes = before.filter(({ atMs }) => atMs >= openedAt.getTime());
    // Kinds were written from the analysis' own types.
    if (isEnough(strokes, before)) return { strokes, since: kind as WarningKind };
  }
  return { strokes: before, since: null };
}

function isEnough(since: readonly StrokeEvent[], before: readonly StrokeEvent[]): boolean {
  return DIRECTIONS.every((direction) => {
    const [left, had] = [since, before].map(
      (strokes) => strokes.filter((one) => runs(one) === direction).length,
    );
    return left >= Math.min(had, ENOUGH);
  });
}

function runs({ analysis }: StrokeEvent): string | null {
  return analysis.status === 'done' ? analysis.direction : null;
}
