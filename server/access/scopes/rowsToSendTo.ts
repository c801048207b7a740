import type { StrokeToStore } from '../../../ingest/strokeToStore.ts';
import type { RowScope, VisitedCoach } from '../../database/rowScope.ts';

/** The rows that a statement which stores these strokes needs: the places that their senders may send to. */
export function rowsToSendTo(strokes: readonly StrokeToStore[]): RowScope {
  const accounts = new Set<string>();
  const visits = new Map<string, VisitedCoach>();
  for (const { row } of strokes) {
    if (row.coach_id === null) accounts.add(row.account_id);
    else visits.set(row.coach_id, { accountId: row.account_id, coachId: row.coach_id });
  }
  const senders = strokes.map(({ row }) => row.sender_id);
  return { accounts: [...accounts], visits: [...visits.values()], senders };
}
