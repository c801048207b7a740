import { type Kysely, sql } from 'kysely';
import { z } from 'zod';
import type { Verdict } from '../../analysis/warning.ts';
import type { Tables } from '../../migrations/tables.ts';
import { type AccountInScope, type Scope, visitsOf } from '../access/scope.ts';
import type { CoachOverview } from '../schemas/results.ts';
import { cutPage, readCursor } from './keysetCursor.ts';
import { roomStatuses } from './roomStatus.ts';

/** The most worrying first. A room without an answer asks for more than one that is merely learning. */
const BY_CONCERN: readonly Verdict[] = ['stop', 'service', 'watch', 'unknown', 'learning', 'clear'];
const Place = z.tuple([z.int(), z.string(), z.uuid()]);

interface CoachRow {
  /** At home or visited: the query finds no other. */
  readonly account_id: AccountInScope;
  readonly id: string;
  readonly name: string;
  readonly model: string | null;
  readonly year: number | null;
  readonly concern: number;
}

/** The coaches with their rooms' verdicts, in order of concern, then by name; those without rooms come last. */
export async function overview(
  db: Kysely<Tables>,
  person: Scope,
  { limit, cursor }: { readonly limit: number; readonly cursor?: string },
): Promise<{ items: CoachOverview[]; next: string | null }> {
  const [concern, name, id] = cursor ? readCursor(cursor, Place) : [null, null, null];
  const visits = visitsOf(person);
  const { rows } = await sql<CoachRow>`
    with ranked as (
      select c.account_id, c.id, c.name, c.model, c.year, coalesce(min(
        array_position(${BY_CONCERN}::text[], coalesce(p.summary ->> 'verdict', 'learning'))
      ) filter (where r.id is not null), ${BY_CONCERN.length + 1}) as concern
      from coaches c
      left join rooms r on r.account_id = c.account_id and r.coach_id = c.id
      left join room_progress p on p.account_id = r.account_id and p.room_id = r.id
      where c.account_id = ${person.accountId} or (c.account_id, c.id) in (
        select * from unnest(
          ${visits.map((visit) => visit.accountId)}::uuid[], ${visits.map((visit) => visit.coachId)}::uuid[]
        )
      )
      group by c.account_id, c.id
    )
    select * from ranked
    where ${concern}::integer is null or (concern, name, id) > (${concern}::integer, ${name}::text, ${id}::uuid)
    order by concern, name, id limit ${limit + 1}
  `.execute(db);
  const page = cutPage(
    rows,
    limit,
    (row) => [row.concern, row.name, row.id],
    (row) => row,
  );
  const accounts = [...new Set(page.items.map((coach) => coach.account_id))];
  const rooms = await Promise.all(
    accounts.map((accountId) =>
      roomsOf(
        db,
        accountId,
        page.items.filter((coach) => coach.account_id === accountId),
      ),
    ),
  );
  return { items: page.items.map((coach) => withRooms(coach, rooms.flat())), next: page.next };
}

type RoomAndCoach = CoachOverview['rooms'][number] & { readonly coachId: string };

async function roomsOf(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  coaches: readonly CoachRow[],
): Promise<RoomAndCoach[]> {
  const rooms = await db
    .selectFrom('rooms')
    .selectAll()
    .where('account_id', '=', accountId)
    .where(
      'coach_id',
      'in',
      coaches.map((coach) => coach.id),
    )
    .orderBy('id')
    .execute();
  const statuses = await roomStatuses(db, accountId, rooms);
  return rooms.map((room, i) => ({ id: room.id, name: room.name, coachId: room.coach_id, ...statuses[i] }));
}

function withRooms({ id, name, model, year }: CoachRow, rooms: readonly RoomAndCoach[]): CoachOverview {
  const own = rooms.filter((room) => room.coachId === id).map(({ coachId: _, ...room }) => room);
  return { id, name, model, year, rooms: own };
}
