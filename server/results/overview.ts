import { type Kysely, sql } from 'kysely';
import { z } from 'zod';
import type { Verdict } from '../../analysis/warning.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { CoachOverview } from '../schemas/results.ts';
import { cutPage, readCursor } from './keysetCursor.ts';
import { roomStatuses } from './roomStatus.ts';

/** The most worrying first. A room without an answer asks for more than one that is merely learning. */
const BY_CONCERN: readonly Verdict[] = ['stop', 'service', 'watch', 'unknown', 'learning', 'clear'];
const Place = z.tuple([z.int(), z.string(), z.uuid()]);

interface CoachRow {
  readonly id: string;
  readonly name: string;
  readonly model: string | null;
  readonly year: number | null;
  readonly concern: number;
}

/** The coaches with their rooms' verdicts, in order of concern, then by name; those without rooms come last. */
export async function overview(
  db: Kysely<Tables>,
  accountId: string,
  { limit, cursor }: { readonly limit: number; readonly cursor?: string },
): Promise<{ items: CoachOverview[]; next: string | null }> {
  const [concern, name, id] = cursor ? readCursor(cursor, Place) : [null, null, null];
  const { rows } = await sql<CoachRow>`
    with ranked as (
      select c.id, c.name, c.model, c.year, coalesce(min(
        array_position(${BY_CONCERN}::text[], coalesce(p.summary ->> 'verdict', 'learning'))
      ) filter (where r.id is not null), ${BY_CONCERN.length + 1}) as concern
      from coaches c
      left join rooms r on r.account_id = c.account_id and r.coach_id = c.id
      left join room_progress p on p.account_id = r.account_id and p.room_id = r.id
      where c.account_id = ${accountId}
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
  return { items: await withRooms(db, accountId, page.items), next: page.next };
}

async function withRooms(
  db: Kysely<Tables>,
  accountId: string,
  coaches: readonly CoachRow[],
): Promise<CoachOverview[]> {
  if (coaches.length === 0) return [];
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
  return coaches.map(({ id, name, model, year }) => ({
    id,
    name,
    model,
    year,
    rooms: rooms.flatMap((room, i) =>
      room.coach_id === id ? [{ id: room.id, name: room.name, ...statuses[i] }] : [],
    ),
  }));
}
