import { type ExpressionBuilder, type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { type AccountInScope, type Scope, visitsOf } from '../access/scopes/scope.ts';
import { type AnsweredPage, pageByTime } from '../paging.ts';
import { notFound } from '../problems.ts';
import type { Warning, WarningsQuery } from '../schemas/results.ts';
import { successorOf } from './formerWarnings.ts';
import { type WarningRow, warningView } from './warningView.ts';

/** The warnings of one room, or of all that the person sees at home and on visits, newest first. */
export async function listWarnings(
  db: Kysely<Tables>,
  person: Scope,
  roomId: string | null,
  { limit, cursor, state }: WarningsQuery,
): Promise<AnsweredPage<Warning>> {
  let query = selectWarnings(db);
  query =
    roomId === null
      ? query.where((on) => inSight(on, person))
      : query.where('w.account_id', '=', person.accountId).where('w.room_id', '=', roomId);
  if (state === 'cleared') query = query.where('w.cleared_at', 'is not', null);
  else if (state !== 'all') {
    query = query
      .where('w.cleared_at', 'is', null)
      .where('w.acknowledged_at', state === 'open' ? 'is' : 'is not', null);
  }
  const list = `warnings/${roomId ?? 'all'}`;
  return pageByTime(query, 'opened_at', { list, limit, cursor }, warningView, KIND_AND_SIDE);
}

/** Of several that one stroke raised: the same in every room, whatever their ids are. */
const KIND_AND_SIDE = {
  column: sql<string>`(kind || ' ' || coalesce(side, ''))`,
  of: ({ kind, side }: WarningRow) => `${kind} ${side ?? ''}`,
};

/**
 * A warning of the account, by its id or one that it stood under before; to everyone else it does not exist.
 */
export async function findWarning(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  warningId: string,
): Promise<WarningRow> {
  const standing = (id: string) =>
    selectWarnings(db).where('w.account_id', '=', accountId).where('w.id', '=', id).executeTakeFirst();
  const found = await standing(warningId);
  if (found !== undefined) return found;
  const successor = await successorOf(db, accountId, warningId);
  const inItsPlace = successor === null ? undefined : await standing(successor);
  if (inItsPlace === undefined) throw notFound('warning');
  return inItsPlace;
}

/** All warnings of one room, oldest first. */
export async function findWarnings(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
): Promise<Warning[]> {
  const rows = await selectWarnings(db)
    .where('w.account_id', '=', accountId)
    .where('w.room_id', '=', roomId)
    .orderBy('w.opened_at')
    .orderBy('w.kind')
    .orderBy('w.side')
    .orderBy('w.id')
    .execute();
  return rows.map(warningView);
}

/** Of every account: each caller names those that are in its scope. */
function selectWarnings(db: Kysely<Tables>) {
  return (
    db
      .selectFrom('warnings as w')
      .selectAll('w')
      // Whoever acknowledged it may have been on a visit from another account.
      .select(
        sql<string | null>`case when w.acknowledged_by is not null then name_of(w.acknowledged_by) end`.as(
          'acknowledged_by_name',
        ),
      )
      .select(({ selectFrom }) =>
        selectFrom('strokes as s')
          .select('s.started_at')
          .whereRef('s.account_id', '=', 'w.account_id')
          .whereRef('s.id', '=', 'w.first_stroke_id')
          .as('first_started_at'),
      )
  );
}

type Warnings = ExpressionBuilder<Tables & { w: Tables['warnings'] }, 'w'>;

function inSight({ eb, or, selectFrom }: Warnings, person: Scope) {
  const visited = visitsOf(person).map(({ accountId, coachId }) =>
    eb('w.account_id', '=', accountId).and(
      'w.room_id',
      'in',
      selectFrom('rooms').select('id').where('account_id', '=', accountId).where('coach_id', '=', coachId),
    ),
  );
  return or([eb('w.account_id', '=', person.accountId), ...visited]);
}
