import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findColleague } from '../../../server/access/people/people.ts';
import { accountInScope } from '../../../server/access/scopes/scope.ts';
import { type Database, inScope, openDatabase } from '../../../server/database/openDatabase.ts';
import type { RowScope } from '../../../server/database/rowScope.ts';
import { readTrace } from '../../../server/results/trace/readTrace.ts';
import { trendText } from '../../../server/results/trend/trendText.ts';
import { findWarning } from '../../../server/results/warnings.ts';
import { deleteCoach, findCoach } from '../../../server/things/coaches.ts';
import { findGrant } from '../../../server/things/grants.ts';
import { removeLogger } from '../../../server/things/loggers.ts';
import { findRoom } from '../../../server/things/rooms.ts';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import {
  dayAt,
  type Fleet,
  newFleet,
  newService,
  settled,
  store,
  strokeBody,
} from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
let dealer: Member;
let fleet: Fleet;
let other: Fleet;
let stranger: Member;
let strokeId: string;
let warningId: string;
let grantId: string;

beforeAll(async () => {
  [dealer, stranger] = [await service.newAccount(), await service.newAccount()];
  fleet = await newFleet(service, dealer.token);
  other = await newFleet(service, dealer.token);
  [strokeId] = await store(service, fleet, [strokeBody(fleet.roomId, 0)]);
  await store(service, other, [strokeBody(other.roomId, 0)]);
  await newService(service, fleet, dayAt(1));
  await newService(service, other, dayAt(1));
  await settled(service, dealer.token, fleet.roomId);
  await settled(service, dealer.token, other.roomId);
  warningId = randomUUID();
  await service.pool.query(
    `insert into warnings (account_id, id, room_id, kind, severity, opened_at, first_stroke_id, latest_stroke_id,
       headline, evidence, checks, cautions)
     select account_id, $1, id, 'stall-spike', 'watch', now(), $2, $2, 'Peaks', '{}', '[]', '[]'
     from rooms where id = $3`,
    [warningId, strokeId, fleet.roomId],
  );
  // What no request of this file makes; every table needs a row of the dealer's for the test of all tables.
  const values = [dealer.person.accountId, fleet.roomId];
  await service.pool.query(
    `insert into verdict_changes (account_id, room_id, verdict_before, verdict) values ($1, $2, 'clear', 'watch')`,
    values,
  );
  await service.pool.query(
    `insert into retention_runs (account_id, id, ran_at, trace_months, removed_before, traces_before, traces_removed,
       bytes_removed, traces_after) values ($1, $2, now(), 1, now(), 0, 0, 0, 0)`,
    values,
  );
  await service.pool.query(
    `insert into live_strokes (account_id, id, logger_id, key, room_id, header, link_id)
     values ($1, $2, $3, 'under way', $2, '{}', $2)`,
    [...values, fleet.loggerId],
  );
  await service.pool.query(
    `insert into removed_strokes (account_id, sender_id, key, stroke_id, coach_id, logger_id)
     values ($1, $3, 'removed', $2, $4, $3)`,
    [...values, fleet.loggerId, fleet.coachId],
  );
  await service.pool.query(
    `insert into former_warnings (account_id, id, room_id, kind, opened_at, last_at)
     values ($1, $2, $2, 'late-side', now(), now())`,
    values,
  );
  await service.pool.query(
    `insert into live_pieces (account_id, stroke_id, seq, first_sample, samples) values ($1, $2, 0, 0, '')`,
    values,
  );
  await service.pool.query(
    `insert into lent_normals (account_id, room_id, place, direction, peers, namesakes)
     values ($1, $2, 0, 'extend', $2, $2) on conflict do nothing`,
    values,
  );
  await service.as(dealer.token, 'POST', '/tokens', {
    name: 'Nightly list',
    until: new Date(Date.now() + 86_400_000).toISOString(),
  });
  await service.pool.query(
    `insert into password_resets (account_id, token_hash, person_id, expires_at) values ($1, '\\x00', $2, now())`,
    [dealer.person.accountId, dealer.person.id],
  );
  await service.as(dealer.token, 'POST', '/webhooks', { url: 'https://programs.example.com/news' });
  await service.pool.query(
    `insert into webhook_deliveries (account_id, webhook_id, id, key, event, body)
     select account_id, id, $2, 'one', 'test', '{}' from webhooks where account_id = $1`,
    values,
  );
  await service.pool.query(
    `insert into mail_notices (account_id, person_id, key, notice) values ($1, $2, 'one', '{}')`,
    [dealer.person.accountId, dealer.person.id],
  );
  await service.pool.query(
    `insert into told_warnings (account_id, room_id, warning_id, kind, opened_at, severity, open)
     values ($1, $2, $2, 'late-side', now(), 'watch', true)`,
    values,
  );
  await service.pool.query(
    `insert into rooms_to_tell (account_id, room_id, due_at) values ($1, $2, now() + interval '1 day')`,
    values,
  );
  const granted = await service.request('POST', `/coaches/${fleet.coachId}/grants`, {
    token: dealer.token,
    headers: { 'idempotency-key': 'once' },
    body: { email: `${randomUUID()}@example.com`, role: 'owner' },
  });
  grantId = granted.body.id;
});

const within = (scope: RowScope) => inScope(service.app.database, scope);
const ofDealer = (): RowScope => ({ accounts: [dealer.person.accountId] });

/** Every table whose rows belong to an account, as the database itself knows them. */
async function tablesOfAccounts(): Promise<{ name: string; column: string; locked: boolean }[]> {
  const { rows } = await service.pool.query(`
    select c.relname as name, a.attname as column, c.relrowsecurity and c.relforcerowsecurity and exists (
      select from pg_policy p where p.polrelid = c.oid and p.polname = 'by_account'
    ) as locked
    from pg_class c join pg_attribute a on a.attrelid = c.oid
      and a.attname = case c.relname when 'accounts' then 'id' else 'account_id' end
    where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p') order by 1`);
  return rows;
}

const count = async (scope: RowScope, table: string, column: string): Promise<number> => {
  const { rows } = await within(scope).pool.query<{ n: number }>({
    text: `select count(*)::integer as n from ${table} where ${column} = $1`,
    values: [dealer.person.accountId],
  });
  return rows[0].n;
};

test('every table with an account is locked', async () => {
  const tables = await tablesOfAccounts();
  expect(tables.filter(({ locked }) => !locked)).toEqual([]);
  expect(tables.length).toBeGreaterThan(17);
});

test('connections are of a role that is held to the locks', async () => {
  const { rows } = await service.app.database.pool.query(
    'select rolsuper or rolbypassrls as bypasses from pg_roles where rolname = current_user',
  );
  expect(rows).toEqual([{ bypasses: false }]);
});

/** All but those that follow from others. */
async function writtenColumns(table: string): Promise<string[]> {
  const { rows } = await service.pool.query(
    `select quote_ident(column_name) as name from information_schema.columns
     where table_schema = current_schema and table_name = $1 and is_generated = 'NEVER'`,
    [table],
  );
  return rows.map(({ name }) => name);
}

test('in every table a scope without the account sees, changes, removes and adds nothing', async () => {
  const scopes: [string, () => RowScope][] = [
    ['a stranger', () => ({ accounts: [stranger.person.accountId] })],
    ['nobody', () => ({})],
    [
      'a visitor of another coach',
      () => ({ visits: [{ accountId: stranger.person.accountId, coachId: newId() }] }),
    ],
    [
      'a sender of a stranger',
      () => ({ accounts: [stranger.person.accountId], senders: [stranger.person.id] }),
    ],
  ];
  const empty: string[] = [];
  for (const { name, column } of await tablesOfAccounts()) {
    const there = await count(ofDealer(), name, column);
    // The default partition is for samples of other months.
    if (there === 0 && name !== 'traces_default' && !/^traces_\d/.test(name)) empty.push(name);
    if (there === 0) continue;
    const written = (await writtenColumns(name)).join();
    const { rows } = await service.pool.query(
      `select to_jsonb(t) as row from ${name} t where ${column} = $1 limit 1`,
      [dealer.person.accountId],
    );
    for (const [who, scope] of scopes) {
      const { pool } = within(scope());
      const all = await pool.query({
        text: `select * from ${name} where ${column} = '${dealer.person.accountId}'`,
      });
      expect(all.rows, `${who} reads ${name}`).toEqual([]);
      if (name === 'record') {
        for (const change of [`update record set act = 'none'`, 'delete from record', 'truncate record'])
          await expect(pool.query({ text: change }), `${who}: ${change}`).rejects.toMatchObject({
            code: '42501',
          });
        continue;
      }
      const changed = await pool.query({ text: `update ${name} set ${column} = ${column}` });
      const touched = await count(ofDealer(), name, column);
      expect([changed.rowCount === 0 || who === 'a stranger', touched], `${who} changes ${name}`).toEqual([
        true,
        there,
      ]);
      await pool.query({ text: `delete from ${name} where ${column} = '${dealer.person.accountId}'` });
      expect(await count(ofDealer(), name, column), `${who} removes from ${name}`).toBe(there);
      const added = pool.query({
        text: `insert into ${name} (${written}) select ${written} from jsonb_populate_record(null::${name}, $1)`,
        values: [JSON.stringify(rows[0].row)],
      });
      await expect(added, `${who} adds to ${name}`).rejects.toMatchObject({ code: '42501' });
    }
  }
  expect(empty).toEqual([]);
});

test('a visit shows one coach of an account and what is of it, and no people', async () => {
  const { pool } = within({ visits: [{ accountId: dealer.person.accountId, coachId: fleet.coachId }] });
  const ids = async (table: string, column = 'id') =>
    (await pool.query<{ id: string }>({ text: `select distinct ${column} as id from ${table}` })).rows.map(
      (row) => row.id,
    );
  expect(await ids('coaches')).toEqual([fleet.coachId]);
  expect(await ids('rooms')).toEqual([fleet.roomId]);
  expect(await ids('loggers')).toEqual([fleet.loggerId]);
  for (const table of [
    'strokes',
    'services',
    'measures',
    'room_progress',
    'room_results',
    'room_checkpoints',
    'warnings',
    'former_warnings',
  ])
    expect(await ids(table, 'room_id'), table).toEqual([fleet.roomId]);
  expect(await ids('traces', 'stroke_id')).toEqual([strokeId]);
  for (const table of ['accounts', 'people', 'directory', 'sessions', 'invitations', 'idempotency_keys'])
    expect((await pool.query({ text: `select from ${table}` })).rowCount, table).toBe(0);
});

describe('a logger', () => {
  const asLogger = () =>
    within({
      senders: [fleet.loggerId],
      visits: [{ accountId: dealer.person.accountId, coachId: fleet.coachId }],
    }).pool;

  test('sees itself, the rooms to send to and what it sent, and nothing else', async () => {
    const seen: Record<string, number | null> = {};
    for (const { name } of await tablesOfAccounts())
      seen[name] = (await asLogger().query({ text: `select from ${name}` })).rowCount;
    const some = Object.entries(seen).filter(([, rows]) => rows !== 0);
    expect(Object.fromEntries(some)).toEqual({
      rooms: 1,
      strokes: 1,
      room_progress: 1,
      loggers: 1,
      removed_strokes: 1,
      live_strokes: 1,
      live_pieces: 1,
    });
  });

  test('adds strokes to rooms of its own coach alone, and changes none', async () => {
    const add = (roomId: string, senderId: string) =>
      asLogger().query({
        text: `insert into strokes (account_id, id, room_id, sender_id, key, started_at, placed_at, recorded_sides,
            has_supply)
          values ($1, $2, $3, $4, 'by hand', now(), now(), '{front}', false)`,
        values: [dealer.person.accountId, newId(), roomId, senderId],
      });
    await expect(add(other.roomId, fleet.loggerId)).rejects.toMatchObject({ code: '42501' });
    await expect(add(fleet.roomId, other.loggerId)).rejects.toMatchObject({ code: '42501' });
    expect((await add(fleet.roomId, fleet.loggerId)).rowCount).toBe(1);
    for (const table of ['strokes', 'rooms']) {
      expect((await asLogger().query({ text: `update ${table} set id = id` })).rowCount).toBe(0);
      expect((await asLogger().query({ text: `delete from ${table}` })).rowCount).toBe(0);
    }
    expect((await asLogger().query({ text: 'delete from room_progress' })).rowCount).toBe(0);
  });
});

describe('with the first lock left open', () => {
  /** As if a route had taken somebody else's account for its caller's. */
  const wrong = () => accountInScope(dealer.person.accountId);
  const theirs = () => within({ accounts: [stranger.person.accountId] });
  const question = { measure: 'runningAmps', direction: 'extend', side: 'front' } as const;

  test.each<[string, () => Promise<unknown>]>([
    ['a coach', () => findCoach(theirs().db, wrong(), fleet.coachId)],
    ['a room', () => findRoom(theirs().db, wrong(), fleet.roomId)],
    ['a trace', () => readTrace(theirs().db, wrong(), strokeId)],
    ['a trend', () => trendText(theirs().db, theirs().pool, wrong(), fleet.roomId, question)],
    ['a grant', () => findGrant(theirs().db, wrong(), grantId)],
    ['a person', () => findColleague(theirs().db, wrong(), dealer.person.id)],
    [
      'removing a coach',
      () =>
        theirs()
          .db.transaction()
          .execute((trx) => deleteCoach(trx, wrong(), fleet.coachId)),
    ],
    ['removing a logger', () => removeLogger(theirs().db, wrong(), fleet.loggerId)],
  ])('%s of another account is not found', async (_what, ask) => {
    await expect(ask()).rejects.toMatchObject({ problem: 'not-found' });
  });

  test('a warning of another account is not found', async () => {
    await expect(findWarning(theirs().db, wrong(), warningId)).rejects.toThrow('There is no warning');
    expect(await findWarning(within(ofDealer()).db, wrong(), warningId)).toMatchObject({ id: warningId });
  });
});

describe('a pooled connection', () => {
  const accounts = sql<{ id: string }>`select id from accounts`;
  const ids = () => [dealer.person.accountId, stranger.person.accountId];
  /** One connection, so that everybody gets the same. */
  let one: Database;
  beforeAll(() => {
    one = openDatabase(service.app.database.pool.options.connectionString ?? '', 1);
  });
  afterAll(() => one?.pool.end());

  test("is in nobody's scope for the next, whatever became of it", async () => {
    expect((await accounts.execute(inScope(one, ofDealer()).db)).rows).toEqual([{ id: ids()[0] }]);
    expect((await one.pool.query('select from accounts')).rowCount).toBe(0);
    const failing = sql`select 1 / 0`.execute(inScope(one, ofDealer()).db);
    await expect(failing).rejects.toThrow('division by zero');
    expect((await accounts.execute(one.db)).rows).toEqual([]);
    const broken = inScope(one, ofDealer()).db.transaction();
    await expect(broken.execute((trx) => sql`select 1 / 0`.execute(trx))).rejects.toThrow('division');
    expect((await accounts.execute(one.db)).rows).toEqual([]);
  });

  test('sees one scope and then another, each by itself, also when many take turns', async () => {
    const seen = await Promise.all(
      Array.from({ length: 60 }, (_, i) => accounts.execute(inScope(one, { accounts: [ids()[i % 2]] }).db)),
    );
    expect(seen.map(({ rows }) => rows)).toEqual(
      Array.from({ length: 60 }, (_, i) => [{ id: ids()[i % 2] }]),
    );
  });
});
