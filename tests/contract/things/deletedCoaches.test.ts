import { beforeAll, expect, test } from 'vitest';
import { tidy } from '../../../server/work/jobs/tidy.ts';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import {
  dayAt,
  type Fleet,
  newFleet,
  newService,
  send,
  store,
  strokeBody,
} from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
let dealer: Member;
let visitor: Member;
let fleet: Fleet;
let paths: string[];
let grantId: string;

beforeAll(async () => {
  dealer = await service.newAccount();
  visitor = await service.newAccount();
});

/** A coach with one of everything, seen by a visitor too. */
async function prepare(): Promise<void> {
  fleet = await newFleet(service, dealer.token);
  const [strokeId] = await store(service, fleet, [strokeBody(fleet.roomId, 0)]);
  const serviceId = await newService(service, fleet, dayAt(1));
  const grant = await service.as(dealer.token, 'POST', `/coaches/${fleet.coachId}/grants`, {
    email: visitor.email,
    role: 'technician',
  });
  grantId = grant.body.id;
  await service.pool.query(
    `insert into warnings (account_id, id, room_id, kind, severity, opened_at, first_stroke_id, latest_stroke_id,
       headline, evidence, checks, cautions)
     values ($1, $2, $3, 'stall-spike', 'watch', now(), $2, $2, 'Peaks', '{}', '[]', '[]')`,
    [dealer.person.accountId, strokeId, fleet.roomId],
  );
  paths = [
    `/coaches/${fleet.coachId}`,
    `/coaches/${fleet.coachId}/rooms`,
    `/coaches/${fleet.coachId}/loggers`,
    `/rooms/${fleet.roomId}`,
    `/rooms/${fleet.roomId}/status`,
    `/rooms/${fleet.roomId}/strokes`,
    `/rooms/${fleet.roomId}/warnings`,
    `/loggers/${fleet.loggerId}`,
    `/strokes/${strokeId}`,
    `/strokes/${strokeId}/trace`,
    `/services/${serviceId}`,
  ];
}

/** The answers of everything that is of the coach, and what lists hold of it. */
async function look(token: string) {
  const statuses = [];
  for (const path of paths) statuses.push((await service.as(token, 'GET', path)).status);
  const lists = [];
  for (const list of ['/coaches', '/overview', '/warnings'])
    lists.push(
      (await service.as(token, 'GET', list)).text.includes(
        list === '/warnings' ? fleet.roomId : fleet.coachId,
      ),
    );
  return { statuses: [...new Set(statuses)], lists };
}
const THERE = { statuses: [200], lists: [true, true, true] };
const GONE = { statuses: [404], lists: [false, false, false] };

test('a deleted coach is gone for everybody at once, and comes back whole', async () => {
  await prepare();
  const grants = (token: string) => service.as(token, 'GET', `/grants/${grantId}`);
  expect(await look(dealer.token)).toEqual(THERE);
  expect(await look(visitor.token)).toEqual(THERE);
  expect((await service.as(dealer.token, 'DELETE', `/coaches/${fleet.coachId}`)).status).toBe(204);
  expect(await look(dealer.token)).toEqual(GONE);
  expect(await look(visitor.token)).toEqual(GONE);
  expect((await grants(dealer.token)).status).toBe(404);
  expect((await service.as(dealer.token, 'DELETE', `/coaches/${fleet.coachId}`)).status).toBe(404);
  expect((await send(service, fleet.loggerToken, strokeBody(fleet.roomId, 2))).status).toBe(401);

  const deleted = await service.as(dealer.token, 'GET', '/coaches?state=deleted');
  expect(deleted.body.items).toMatchObject([{ id: fleet.coachId, deletedAt: expect.any(String) }]);
  expect((await service.as(visitor.token, 'GET', '/coaches?state=deleted')).body.items).toEqual([]);

  const restored = await service.as(dealer.token, 'POST', `/coaches/${fleet.coachId}/restoration`);
  expect([restored.status, restored.body.id, restored.body.deletedAt]).toEqual([
    200,
    fleet.coachId,
    undefined,
  ]);
  expect(await look(dealer.token)).toEqual(THERE);
  expect(await look(visitor.token)).toEqual(THERE);
  expect((await grants(dealer.token)).status).toBe(200);
  expect((await service.as(dealer.token, 'GET', '/coaches?state=deleted')).body.items).toEqual([]);
  expect((await service.as(dealer.token, 'POST', `/coaches/${fleet.coachId}/restoration`)).status).toBe(404);
  const [again] = (await send(service, fleet.loggerToken, strokeBody(fleet.roomId, 2))).body.results;
  expect(again.outcome).toBe('stored');
});

test('only a dealer of its account restores it', async () => {
  await prepare();
  const technician = await service.newMember(dealer, 'technician');
  expect((await service.as(technician.token, 'DELETE', `/coaches/${fleet.coachId}`)).status).toBe(204);
  for (const { token } of [technician, visitor, await service.newAccount()]) {
    expect((await service.as(token, 'POST', `/coaches/${fleet.coachId}/restoration`)).status).toBe(404);
    expect((await service.as(token, 'GET', '/coaches?state=deleted')).body.items).toEqual([]);
  }
  expect((await service.as(dealer.token, 'POST', `/coaches/${fleet.coachId}/restoration`)).status).toBe(200);
});

test('after 30 days it is removed for good, and both are in the record', async () => {
  await prepare();
  await service.as(dealer.token, 'DELETE', `/coaches/${fleet.coachId}`);
  await tidy(service.app.database);
  expect((await service.as(dealer.token, 'GET', '/coaches?state=deleted')).body.items).toHaveLength(1);
  await service.pool.query(`update coaches set deleted_at = now() - interval '31 days' where id = $1`, [
    fleet.coachId,
  ]);
  await tidy(service.app.database);
  expect((await service.as(dealer.token, 'GET', '/coaches?state=deleted')).body.items).toEqual([]);
  expect((await service.as(dealer.token, 'POST', `/coaches/${fleet.coachId}/restoration`)).status).toBe(404);
  const record = (await service.as(dealer.token, 'GET', '/record')).body.items;
  const ofCoach = record.filter((one: { coachId: string }) => one.coachId === fleet.coachId);
  expect(
    ofCoach
      .map((one: { act: string; by: { name: string } | null }) => [one.act, one.by?.name ?? null])
      .slice(0, 2),
  ).toEqual([
    ['coach-removed', null],
    ['coach-deleted', dealer.person.name],
  ]);
});
