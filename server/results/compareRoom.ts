import { type Kysely, sql } from 'kysely';
import { aroseSentence } from '../../analysis/compare/aroseSentence.ts';
import type { StrokeEvent } from '../../analysis/history.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope, Scope } from '../access/scopes/scope.ts';
import { invalidField } from '../problems.ts';
import type { Comparison, ComparisonQuery } from '../schemas/results.ts';
import { describeRoom } from '../things/describeRoom.ts';
import { findRoom } from '../things/rooms.ts';
import type { Comparer } from './comparing/comparer.ts';
import { STROKE_EVENT_COLUMNS, strokeEvent } from './strokeEvent.ts';
import { strokesInTrouble } from './strokesInTrouble.ts';
import { troubleRaised } from './troubleRaised.ts';

/** Enough for a narrow interval, and near enough to the repair that wear in between hardly counts. */
const MOST_STROKES_BY_SERVICE = 60;
const MOST_STROKES_BY_SPAN = 2000;

/** Before against after: around a service, or between two spans; once it is the person's turn. */
export async function compareRoom(
  db: Kysely<Tables>,
  comparer: Comparer,
  { accountId, personId }: Scope,
  roomId: string,
  question: ComparisonQuery,
): Promise<Comparison> {
  const room = await findRoom(db, accountId, roomId);
  const { before, after, compared } = await comparer.inTurn(personId, async (compare) => {
    const spans = question.service
      ? await aroundService(db, accountId, roomId, question.service)
      : await betweenSpans(db, accountId, roomId, question);
    const asked = { before: spans.before.strokes, after: spans.after, room: describeRoom(room) };
    return { ...spans, compared: await compare(asked) };
  });
  const arose = await troubleRaised(db, accountId, roomId, after);
  return {
    account: await accountName(db, accountId),
    ...compared,
    sentence: [compared.sentence, aroseSentence(arose)].filter(Boolean).join(' '),
    before: { ...spanOf(before.strokes), since: before.since },
    after: { ...spanOf(after), arose },
  };
}

/** Whose coach it is: a sheet for a customer says from whom it comes. Who was let in to one coach sees no account. */
async function accountName(db: Kysely<Tables>, accountId: AccountInScope): Promise<string | null> {
  const account = await db
    .selectFrom('accounts')
    .select('name')
    .where('id', '=', accountId)
    .executeTakeFirst();
  return account?.name ?? null;
}

function spanOf(strokes: readonly StrokeEvent[]): Omit<Comparison['after'], 'arose'> {
  const at = (stroke: StrokeEvent | undefined) =>
    stroke === undefined ? null : new Date(stroke.atMs).toISOString();
  return { from: at(strokes[0]), to: at(strokes.at(-1)), strokes: strokes.length };
}

/**
 * The strokes right before and right after the work: back to the trouble that it was done for, or to the work before it,
 * and on to the work after it. Several services without a stroke between them are one piece of work.
 */
async function aroundService(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  serviceId: string,
) {
  const services = await db
    .selectFrom('services')
    .select(['id', 'at'])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .orderBy('at')
    .execute();
  const at = services.find((service) => service.id === serviceId)?.at;
  if (at === undefined) throw invalidField('/service', 'The room has no such service.');
  const ofRoom = usable(db, accountId, roomId).limit(MOST_STROKES_BY_SERVICE);
  const earlier = await ofRoom.where('placed_at', '<', at).orderBy('placed_at', 'desc').execute();
  const later = await ofRoom.where('placed_at', '>=', at).orderBy('placed_at').execute();
  const times = services.map((service) => service.at.getTime());
  const lastBefore = earlier[0]?.placed_at.getTime() ?? Number.NEGATIVE_INFINITY;
  const firstAfter = later[0]?.placed_at.getTime() ?? Number.POSITIVE_INFINITY;
  const begin = Math.max(Number.NEGATIVE_INFINITY, ...times.filter((time) => time <= lastBefore));
  const end = Math.min(Number.POSITIVE_INFINITY, ...times.filter((time) => time > firstAfter));
  const before = earlier
    .filter((row) => row.placed_at.getTime() >= begin)
    .map(strokeEvent)
    .reverse();
  return {
    before: await strokesInTrouble(db, accountId, roomId, at, before),
    after: later.filter((row) => row.placed_at.getTime() < end).map(strokeEvent),
  };
}

async function betweenSpans(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  { beforeFrom, beforeTo, afterFrom, afterTo }: ComparisonQuery,
) {
  const between = async (from: string | undefined, to: string | undefined): Promise<StrokeEvent[]> => {
    // The schema asks for all four where no service is named.
    const rows = await usable(db, accountId, roomId)
      .where('placed_at', '>=', new Date(from ?? 0))
      .where('placed_at', '<=', new Date(to ?? 0))
      .orderBy('placed_at', 'desc')
      .limit(MOST_STROKES_BY_SPAN)
      .execute();
    return rows.map(strokeEvent).reverse();
  };
  return {
    before: { strokes: await between(beforeFrom, beforeTo), since: null },
    after: await between(afterFrom, afterTo),
  };
}

/** Whose records could be measured, and that nobody set aside. */
function usable(db: Kysely<Tables>, accountId: AccountInScope, roomId: string) {
  return db
    .selectFrom('strokes')
    .select(STROKE_EVENT_COLUMNS)
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('excluded', '=', false)
    .where(sql<boolean>`analysis ->> 'status' = 'done'`);
}
