import type { Kysely } from 'kysely';
import type { Limits } from '../../analysis/history.ts';
import type { MeasureName } from '../../analysis/measures.ts';
import type { Direction } from '../../analysis/trace.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';

/** What `room_results.limits` holds for each measure of a side in a direction. */
export type RoomLimits = {
  side: string;
  direction: string;
  measure: string;
  limits: Limits;
  /** What a rise is counted from; not there in results of before it was kept, which are made anew. */
  normal?: number;
};

/** The room's limits as they stand, of every measure, side and direction. */
export async function roomLimits(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
): Promise<readonly RoomLimits[]> {
  const row = await db
    .selectFrom('room_results')
    .select('limits')
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .executeTakeFirst();
  // Written by `writeHistory` and nobody else.
  return (row?.limits ?? []) as RoomLimits[];
}

interface LimitsQuestion {
  readonly measure: MeasureName;
  readonly side: string;
  readonly direction: Direction;
}

/** Null while that side is learning in that direction. */
export function limitsOf(all: readonly RoomLimits[], question: LimitsQuestion): Limits | null {
  return withLimits(all, question)?.limits ?? null;
}

/** The level that a rise is counted from, on the scale of the limits; null while learning. */
export function normalOf(all: readonly RoomLimits[], question: LimitsQuestion): number | null {
  const found = withLimits(all, question);
  return found?.normal ?? found?.limits.centre ?? null;
}

function withLimits(all: readonly RoomLimits[], { measure, side, direction }: LimitsQuestion) {
  return all.find((one) => one.measure === measure && one.side === side && one.direction === direction);
}
