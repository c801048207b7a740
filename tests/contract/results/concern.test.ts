import pg from 'pg';
import { v7 as newId } from 'uuid';
import { beforeAll, beforeEach, expect, test } from 'vitest';
import { VERDICTS, type Verdict } from '../../../analysis/warning.ts';
import { BY_CONCERN } from '../../../server/results/overview/coachesInSight.ts';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';

const service = serviceOfTests({ worker: false });
let member: Member;
let coachId: string;

beforeAll(async () => {
  member = await service.newAccount();
});
beforeEach(async () => {
  const made = await service.as(member.token, 'POST', '/coaches', { name: 'Heron' });
  coachId = made.body.id;
});

async function newRoom(): Promise<string> {
  const body = { name: `Room ${newId()}`, drive: 'cable', sides: ['main'] };
  return (await service.as(member.token, 'POST', `/coaches/${coachId}/rooms`, body)).body.id;
}

/** As the analysis writes what it found. */
const FOUND = `insert into room_results (account_id, room_id, summary)
  select account_id, id, jsonb_build_object('verdict', $2::text) from rooms where id = $1
  on conflict (account_id, room_id) do update set summary = excluded.summary`;

const found = (roomId: string, verdict: Verdict) => service.pool.query(FOUND, [roomId, verdict]);

async function concern(): Promise<number> {
  const { rows } = await service.pool.query('select concern from coaches where id = $1', [coachId]);
  return rows[0].concern;
}

const placeOf = (verdict: Verdict) => BY_CONCERN.indexOf(verdict) + 1;
const WITHOUT_ROOMS = BY_CONCERN.length + 1;

test('the database knows the order of concern that the pages go by', async () => {
  const { rows } = await service.pool.query(
    'select verdict, concern_of(verdict) as place from unnest($1::text[]) verdict',
    [VERDICTS],
  );
  expect(rows).toEqual(VERDICTS.map((verdict) => ({ verdict, place: placeOf(verdict) })));
  expect(rows).toHaveLength(BY_CONCERN.length);
});

test('a coach is as worrying as its most worrying room, whatever becomes of its rooms', async () => {
  expect(await concern()).toBe(WITHOUT_ROOMS);
  const [one, other] = [await newRoom(), await newRoom()];
  expect(await concern()).toBe(placeOf('learning'));
  await found(one, 'clear');
  expect(await concern()).toBe(placeOf('learning'));
  for (const verdict of VERDICTS) {
    await found(other, verdict);
    expect(await concern()).toBe(Math.min(placeOf('clear'), placeOf(verdict)));
  }
  await found(other, 'stop');
  await service.as(member.token, 'DELETE', `/rooms/${other}`);
  expect(await concern()).toBe(placeOf('clear'));
  await service.as(member.token, 'DELETE', `/rooms/${one}`);
  expect(await concern()).toBe(WITHOUT_ROOMS);
});

test('a coach that comes back is as worrying as it was', async () => {
  await found(await newRoom(), 'service');
  const { token } = member;
  await service.as(token, 'DELETE', `/coaches/${coachId}`);
  expect((await service.as(token, 'POST', `/coaches/${coachId}/restoration`)).status).toBe(200);
  expect(await concern()).toBe(placeOf('service'));
});

test.each<[Verdict, Verdict]>([
  ['stop', 'clear'],
  ['clear', 'stop'],
  ['watch', 'watch'],
])('two rooms that are found %s and %s at the same time are both counted', async (first, second) => {
  const [one, other] = [await newRoom(), await newRoom()];
  const client = new pg.Client(service.databaseUrl);
  await client.connect();
  await client.query('begin');
  await client.query(FOUND, [one, first]);
  const writing = found(other, second);
  await untilSomebodyWaits(client);
  await client.query('commit');
  await client.end();
  await writing;
  expect(await concern()).toBe(Math.min(placeOf(first), placeOf(second)));
});
