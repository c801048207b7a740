import { type Kysely, type RawBuilder, sql } from 'kysely';
import { z } from 'zod';
import type { Verdict } from '../../../analysis/warning.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { AccountInScope, Scope } from '../../access/scopes/scope.ts';
import { oneMoreThan, type Page, pageFrom, readCursor } from '../../paging.ts';
import type { OverviewQuery } from '../../schemas/overview.ts';
import type { Role } from '../../schemas/session.ts';
import { accountsInSight, coachesInSight, IS_SILENT, VERDICT, verdictsBefore } from './coachesInSight.ts';

/** Every order of the list is by one number, then by name and id. */
const placeIn = (rank: z.ZodType<number>) => z.tuple([rank, z.string(), z.uuid()]);

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

/**
 * One page of the coaches that the query asks for, in its order. What changed is looked for only of those on it; the
 * order of concern is read from an index.
 */
export async function overviewPage(
  db: Kysely<Tables>,
  person: Scope,
  query: OverviewQuery,
): Promise<Page<CoachRow>> {
  const { limit, cursor, since = null } = query;
  const { rank, type, join, place } = ORDERS[query.sort];
  const conditions = conditionsOf(person, query);
  const from = readCursor(overviewList(query), cursor, place);
  if (from !== null) {
    const [after, name, id] = from;
    conditions.push(sql`(${rank}, c.name, c.id) > (${after}::${type}, ${name}::text, ${id}::uuid)`);
  }
  const { rows } = await sql<CoachRow>`
    with ${coachesInSight(person)}, ${verdictsBefore(person, since)},
    page as (
      select c.*, ${rank} as rank from coach c ${join}
      where ${all(conditions)}
      order by ${rank}, c.name, c.id limit ${oneMoreThan(limit)}
    )
    select p.*, coalesce(changed.before, '{}') as before
    from page p
    left join lateral (
      select jsonb_object_agg(r.id, b.verdict_before) as before from ${CHANGED_ROOMS}
      where r.account_id = p.account_id and r.coach_id = p.id and b.verdict_before <> ${VERDICT}
    ) changed on true
    order by p.rank, p.name, p.id
  `.execute(db);
  return pageFrom(rows, limit);
}

/** What cursors of the list in this order name. */
export function overviewList({ sort }: OverviewQuery): string {
  return `overview/${sort}`;
}

const CHANGED_ROOMS = sql`before b
  join rooms r on r.account_id = b.account_id and r.id = b.room_id
  left join room_results o on o.account_id = r.account_id and o.room_id = r.id`;

interface Order {
  readonly rank: RawBuilder<number>;
  /** Of the rank: a comparison with another would go past the index. */
  readonly type: RawBuilder<unknown>;
  /** What else it must be told from. */
  readonly join: RawBuilder<unknown>;
  /** Where a page may go on: a cursor of another order, or a made-up one, may name what the type cannot hold. */
  readonly place: ReturnType<typeof placeIn>;
}

const NOTHING = sql``;
const FLOAT = { type: sql`float8`, place: placeIn(z.number()) };

/** A coach without rooms comes last; one that was never heard, and one that arrived last, first. */
const ORDERS: Readonly<Record<OverviewQuery['sort'], Order>> = {
  concern: {
    rank: sql`c.concern`,
    type: sql`smallint`,
    join: NOTHING,
    place: placeIn(z.int().min(0).max(32_767)),
  },
  name: { rank: sql`0::integer`, type: sql`integer`, join: NOTHING, place: placeIn(z.literal(0)) },
  heard: {
    ...FLOAT,
    rank: sql`extract(epoch from coalesce(h.heard, 'epoch'))::float8`,
    join: sql`left join (
      select account_id, coach_id, max(last_seen_at) as heard from loggers group by account_id, coach_id
    ) h on h.account_id = c.account_id and h.coach_id = c.id`,
  },
  newest: { ...FLOAT, rank: sql`-extract(epoch from c.created_at)::float8`, join: NOTHING },
};

function conditionsOf(person: Scope, query: OverviewQuery): RawBuilder<boolean>[] {
  const { q, model, room, verdict, silent, changed, coaches } = query;
  const accounts = accountsInSight(person);
  const found: RawBuilder<boolean>[] = [];
  // Sets that are found once: asked coach by coach, thousands of them would take seconds.
  const withRoom = (condition: RawBuilder<unknown>) =>
    isAmong(sql`
    select r.account_id, r.coach_id from rooms r
    left join room_results o on o.account_id = r.account_id and o.room_id = r.id
    where r.account_id = any(${accounts}) and ${condition}`);
  if (q !== undefined)
    found.push(sql`(${holds(sql`c.name`, q)} or ${holds(sql`coalesce(c.model, '')`, q)}
      or ${withRoom(holds(sql`r.name`, q))})`);
  if (model !== undefined) found.push(sql`lower(c.model) = lower(${model}::text)`);
  if (room !== undefined || verdict !== undefined)
    found.push(
      withRoom(
        all([
          ...(room === undefined ? [] : [sql<boolean>`r.name = ${room}`]),
          ...(verdict === undefined ? [] : [sql<boolean>`${VERDICT} = ${verdict}`]),
        ]),
      ),
    );
  if (silent !== undefined)
    found.push(
      either(
        silent,
        isAmong(sql`select l.account_id, l.coach_id from loggers l
          where l.account_id = any(${accounts}) and ${IS_SILENT}`),
      ),
    );
  if (changed !== undefined)
    found.push(
      either(
        changed,
        isAmong(
          sql`select r.account_id, r.coach_id from ${CHANGED_ROOMS} where b.verdict_before <> ${VERDICT}`,
        ),
      ),
    );
  if (coaches !== undefined) found.push(sql`c.id = any(${coaches}::uuid[])`);
  return found;
}

/** Whether a row of `coach as c` is in a set of accounts and coaches. */
function isAmong(set: RawBuilder<unknown>): RawBuilder<boolean> {
  return sql<boolean>`(c.account_id, c.id) in (${set})`;
}

function either(wanted: 'true' | 'false', condition: RawBuilder<boolean>): RawBuilder<boolean> {
  return wanted === 'true' ? condition : sql<boolean>`not ${condition}`;
}

/** Whether the text holds the part, in capitals or not; nothing in it is a pattern. */
function holds(text: RawBuilder<unknown>, part: string): RawBuilder<boolean> {
  return sql<boolean>`position(lower(${part}) in lower(${text})) > 0`;
}

function all(conditions: readonly RawBuilder<boolean>[]): RawBuilder<boolean> {
  return conditions.length === 0 ? sql<boolean>`true` : sql<boolean>`${sql.join(conditions, sql` and `)}`;
}
