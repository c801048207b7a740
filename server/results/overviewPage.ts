import { type Kysely, type RawBuilder, sql } from 'kysely';
import { z } from 'zod';
import type { Verdict } from '../../analysis/warning.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope, Scope } from '../access/scope.ts';
import type { OverviewQuery } from '../schemas/overview.ts';
import type { Role } from '../schemas/session.ts';
import { BY_CONCERN, coachesInSight } from './coachesInSight.ts';
import { cutPage, readCursor } from './keysetCursor.ts';

/** Every order of the list is by one number, then by name and id. */
const Place = z.tuple([z.number(), z.string(), z.uuid()]);

export interface CoachRow {
  /** At home or visited: the query finds no other. */
  readonly account_id: AccountInScope;
  readonly id: string;
  readonly name: string;
  readonly model: string | null;
  readonly year: number | null;
  readonly created_at: Date;
  readonly role: Role;
  readonly rank: number;
  /** Of rooms whose verdict changed: what it was. */
  readonly before: Readonly<Record<string, Verdict>>;
}

/** One page of the coaches that the query asks for, in its order. */
export async function overviewPage(
  db: Kysely<Tables>,
  person: Scope,
  query: OverviewQuery,
): Promise<{ items: CoachRow[]; next: string | null }> {
  const { limit, cursor, since = null } = query;
  const [rank, name, id] = cursor ? readCursor(cursor, Place) : [null, null, null];
  const { rows } = await sql<CoachRow>`
    with ${coachesInSight(person, since)},
    room_sum as (
      select account_id, coach_id, min(place) as worst, bool_or(place <> place_before) as changed,
        jsonb_object_agg(id, (${BY_CONCERN}::text[])[place_before])
          filter (where place <> place_before) as before
      from room group by account_id, coach_id
    ),
    logger_sum as (
      select account_id, coach_id, max(last_seen_at) as heard, bool_or(silent) as silent
      from logger group by account_id, coach_id
    ),
    ranked as (
      select c.*, ${rankOf(query.sort)}::float8 as rank, coalesce(rs.before, '{}') as before
      from coach c
      left join room_sum rs on rs.account_id = c.account_id and rs.coach_id = c.id
      left join logger_sum ls on ls.account_id = c.account_id and ls.coach_id = c.id
      where ${all(conditionsOf(query))}
    )
    select * from ranked
    where ${rank}::float8 is null or (rank, name, id) > (${rank}::float8, ${name}::text, ${id}::uuid)
    order by rank, name, id limit ${limit + 1}
  `.execute(db);
  return cutPage(
    rows,
    limit,
    (row) => [row.rank, row.name, row.id],
    (row) => row,
  );
}

/** A coach without rooms comes last; one that was never heard, and one that arrived last, first. */
function rankOf(sort: OverviewQuery['sort']): RawBuilder<number> {
  switch (sort) {
    case 'concern':
      return sql`coalesce(rs.worst, ${BY_CONCERN.length + 1})`;
    case 'name':
      return sql`0`;
    case 'heard':
      return sql`extract(epoch from coalesce(ls.heard, 'epoch'))`;
    case 'newest':
      return sql`-extract(epoch from c.created_at)`;
  }
}

function conditionsOf(query: OverviewQuery): RawBuilder<boolean>[] {
  const { q, model, room, verdict, silent, changed, coaches } = query;
  const found: RawBuilder<boolean>[] = [];
  // A set that is found once: asked coach by coach, thousands of them would take seconds.
  const withRoom = (condition: RawBuilder<unknown>) =>
    sql<boolean>`(c.account_id, c.id) in (select r.account_id, r.coach_id from room r where ${condition})`;
  if (q !== undefined)
    found.push(sql`(${holds(sql`c.name`, q)} or ${holds(sql`coalesce(c.model, '')`, q)}
      or ${withRoom(holds(sql`r.name`, q))})`);
  if (model !== undefined) found.push(sql`c.model = ${model}`);
  if (room !== undefined || verdict !== undefined) {
    const place = verdict === undefined ? null : BY_CONCERN.indexOf(verdict) + 1;
    found.push(
      withRoom(sql`(${room ?? null}::text is null or r.name = ${room ?? null})
        and (${place}::int is null or r.place = ${place})`),
    );
  }
  if (silent !== undefined) found.push(sql`coalesce(ls.silent, false) = ${silent === 'true'}`);
  if (changed !== undefined) found.push(sql`coalesce(rs.changed, false) = ${changed === 'true'}`);
  if (coaches !== undefined) found.push(sql`c.id = any(${coaches}::uuid[])`);
  return found;
}

/** Whether the text holds the part, in capitals or not; nothing in it is a pattern. */
function holds(text: RawBuilder<unknown>, part: string): RawBuilder<boolean> {
  return sql<boolean>`position(lower(${part}) in lower(${text})) > 0`;
}

function all(conditions: readonly RawBuilder<boolean>[]): RawBuilder<boolean> {
  return conditions.length === 0 ? sql<boolean>`true` : sql<boolean>`${sql.join(conditions, sql` and `)}`;
}
