import type { Selectable } from 'kysely';
import type { WarningKind } from '../../analysis/warning.ts';
import type { WarningTable } from '../../migrations/resultTables.ts';
import type { News } from './compareTold.ts';
import type { WarningNotice } from './notice.ts';

/** A warning with when its latest stroke ran; null: that stroke was deleted. */
export type StandingRow = Selectable<WarningTable> & { readonly latest_at: Date | null };

/** A room with what it is called. */
export interface TellableRoom {
  readonly account_id: string;
  readonly room_id: string;
  readonly room: string;
  readonly coach_id: string;
  readonly coach: string;
}

const NO_LONGER = 'Strokes that came in later do not bear it out any more.';

/** What is told of a warning. `row` is missing where it no longer follows from the history. */
export function warningNotice(
  room: TellableRoom,
  { event, told }: News,
  row: StandingRow | undefined,
  now: Date,
): WarningNotice {
  return {
    event,
    at: now.toISOString(),
    accountId: room.account_id,
    coachId: room.coach_id,
    coach: room.coach,
    roomId: room.room_id,
    room: room.room,
    warningId: told.warningId,
    // It was written from the analysis' own type.
    kind: told.kind as WarningKind,
    severity: told.severity,
    side: told.side,
    direction: told.direction,
    headline: row?.headline ?? NO_LONGER,
    openedAt: told.openedAt.toISOString(),
    clearedAt: told.clearedAt?.toISOString() ?? null,
    // Lists of sentences, as the analysis wrote them.
    checks: (row?.checks ?? []) as string[],
    cautions: (row?.cautions ?? []) as string[],
  };
}
