import { type Kysely, sql } from 'kysely';
import type { StrokeEvent } from '../../analysis/history.ts';
import type { WarningKind } from '../../analysis/warning.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { placeOfSeverity } from './severityOrder.ts';
import { NOT_OF_THE_ROOM } from './strokesInTrouble.ts';

/** The gravest warning that some strokes after work raised, of several the earliest; null: none. */
export async function troubleRaised(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  after: readonly StrokeEvent[],
): Promise<WarningKind | null> {
  const [first, last] = [after[0], after.at(-1)];
  if (first === undefined || last === undefined) return null;
  const gravest = await db
    .selectFrom('warnings')
    .select('kind')
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('opened_at', '>=', new Date(first.atMs))
    .where('opened_at', '<=', new Date(last.atMs))
    .where('kind', 'not in', NOT_OF_THE_ROOM)
    .orderBy(placeOfSeverity(sql.ref('severity')), 'desc')
    .orderBy('opened_at')
    .limit(1)
    .executeTakeFirst();
  // Kinds were written from the analysis' own types.
  return (gravest?.kind ?? null) as WarningKind | null;
}
