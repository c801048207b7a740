import { type Kysely, sql } from 'kysely';
import { normalProfile, type ReferenceProfile } from '../../analysis/baseline/normalProfile.ts';
import { REFERENCE_STROKES } from '../../analysis/baseline/strokesNeeded.ts';
import type { Limits } from '../../analysis/history.ts';
import { MEASURE_INDEX } from '../../analysis/measures.ts';
import { median } from '../../analysis/statistics/median.ts';
import type { Direction } from '../../analysis/trace.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { invalidField } from '../problems.ts';
import type { Normal, NormalQuery, NormalSide } from '../schemas/travel.ts';
import { findRoom } from '../things/rooms.ts';
import { isBeyond, measurePlace } from './measurePlace.ts';
import { limitsOf, roomLimits } from './roomLimits.ts';

interface Place {
  readonly accountId: AccountInScope;
  readonly roomId: string;
  readonly side: string;
  readonly direction: Direction;
}

/**
 * What is normal along the travel for each side: of the strokes that the present baseline was learnt from or, for a
 * stroke, of those that its own was learnt from, at the level that was expected of it.
 */
export async function normalOfRoom(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  { direction, stroke }: NormalQuery,
): Promise<Normal> {
  const room = await findRoom(db, accountId, roomId);
  const judged = stroke === undefined ? null : await judgedStroke(db, accountId, roomId, stroke);
  const limits = await roomLimits(db, accountId, roomId);
  const sides = await Promise.all(
    room.sides.map(async (side): Promise<[string, NormalSide | null]> => {
      const place = { accountId, roomId, side, direction };
      const reference = await referenceStrokes(db, place, judged?.placed_at ?? null);
      const present = limitsOf(limits, { measure: 'runningAmps', side, direction });
      const expected = judged && (await expectedAmps(db, place, judged));
      const profile = normalProfile(reference, levelFor(expected, present, reference));
      return [side, profile && { strokes: reference.length, ...profile }];
    }),
  );
  return { direction, sides: Object.fromEntries(sides) };
}

/** The present limits moved to what was expected of the stroke; while learning, the reference's own level. */
function levelFor(
  expected: number | null,
  present: Limits | null,
  reference: readonly ReferenceProfile[],
): Limits {
  const centre =
    expected ?? present?.centre ?? (reference.length > 0 ? median(reference.map((r) => r.runningAmps)) : 0);
  if (present === null) return { lower: centre, centre, upper: centre };
  const part = centre / present.centre;
  return { lower: present.lower * part, centre, upper: present.upper * part };
}

interface JudgedStroke {
  readonly id: string;
  readonly placed_at: Date;
}

async function judgedStroke(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
  strokeId: string,
): Promise<JudgedStroke> {
  return db
    .selectFrom('strokes')
    .select(['id', 'placed_at'])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('id', '=', strokeId)
    .executeTakeFirstOrThrow(() => invalidField('/stroke', 'The room has no such stroke.'));
}

const RUNNING = measurePlace('runningAmps');

async function expectedAmps(
  db: Kysely<Tables>,
  { accountId, roomId, side, direction }: Place,
  { id, placed_at }: JudgedStroke,
): Promise<number | null> {
  const row = await db
    .selectFrom('measures')
    .select('expected')
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('side', '=', side)
    .where('direction', '=', direction)
    .where('placed_at', '=', placed_at)
    .where('stroke_id', '=', id)
    .executeTakeFirst();
  return row?.expected[MEASURE_INDEX.runningAmps] ?? null;
}

/**
 * The first strokes of the latest baseline that was begun by `at`. Strokes without an expectation are what a baseline
 * is learnt from, so it begins after the last judged stroke before them.
 */
async function referenceStrokes(
  db: Kysely<Tables>,
  { accountId, roomId, side, direction }: Place,
  at: Date | null,
): Promise<ReferenceProfile[]> {
  const running = sql.lit(RUNNING);
  const { rows } = await sql<ReferenceProfile>`
    with own as (
      select placed_at, stroke_id, value[${running}] as value, expected[${running}] as expected,
        ${sql.raw(isBeyond(RUNNING))} as beyond
      from measures
      where account_id = ${accountId} and room_id = ${roomId} and side = ${side} and direction = ${direction}
    ), learnt as (
      select max(placed_at) as at from own
      where expected is null and placed_at <= coalesce(${at}::timestamptz, 'infinity')
    ), begun as (
      select coalesce(max(placed_at), '-infinity') as at from own
      where expected is not null and placed_at < (select at from learnt)
    )
    select s.analysis -> 'sides' -> ${side} -> 'profile' as profile, o.value as "runningAmps"
    from (
      select placed_at, stroke_id, value from own
      where placed_at > (select at from begun) and not beyond and value is not null
      order by placed_at, stroke_id limit ${sql.lit(REFERENCE_STROKES)}
    ) o
    join strokes s on s.account_id = ${accountId} and s.id = o.stroke_id
    where s.analysis ->> 'status' = 'done' and not s.excluded`.execute(db);
  // The analysis is written by this program alone; a side that it lacks has no profile.
  return rows.filter(({ profile }) => Array.isArray(profile));
}
