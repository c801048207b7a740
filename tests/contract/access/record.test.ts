import { randomUUID } from 'node:crypto';
import { version as uuidVersion } from 'uuid';
import { beforeAll, expect, test } from 'vitest';
import { ACTS_OF } from '../../../dashboards/src/record/kinds.ts';
import { recordWords } from '../../../dashboards/src/words/record.ts';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { dayAt, type Fleet, newFleet, newService } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
let dealer: Member;
let fleet: Fleet;

beforeAll(async () => {
  dealer = await service.newAccount();
  fleet = await newFleet(service, dealer.token);
});

/** Acts of the account, oldest first, as the dealer reads them. */
async function acts(query = ''): Promise<Record<string, unknown>[]> {
  const answer = await service.as(dealer.token, 'GET', `/record?limit=500${query}`);
  expect(answer.status, answer.text).toBe(200);
  return answer.body.items.reverse();
}

/** What was noted while something was done. */
async function notedBy(
  work: () => Promise<unknown>,
): Promise<{ act: string; by: string | null; details: object }[]> {
  const before = (await acts()).length;
  await work();
  return (await acts()).slice(before).map((one) => ({
    act: String(one.act),
    by: (one.by as { name: string } | null)?.name ?? null,
    details: one.details as object,
  }));
}

test('signing in, failing to, and signing out', async () => {
  const { name } = dealer.person;
  const noted = await notedBy(async () => {
    await service.request('POST', '/session', {
      body: { email: dealer.email, password: 'not the password' },
    });
    const token = await service.signIn(dealer.email, dealer.password);
    await service.as(token, 'DELETE', '/session');
  });
  expect(noted.map(({ act, by }) => [act, by])).toEqual([
    ['sign-in-failed', null],
    ['signed-in', name],
    ['signed-out', name],
  ]);
});

test('people, roles, invitations and passwords', async () => {
  const email = `${randomUUID()}@example.com`;
  const noted = await notedBy(async () => {
    const invited = await service.as(dealer.token, 'POST', '/people', { email, name: 'Ines', role: 'owner' });
    const joined = await service.request('POST', `/invitations/${invited.body.invitation}`, {
      body: { password: 'a long enough secret' },
    });
    const { id } = invited.body.person;
    await service.as(dealer.token, 'PATCH', `/people/${id}`, { role: 'technician' });
    await service.as(joined.body.token, 'PUT', '/password', {
      oldPassword: 'a long enough secret',
      newPassword: 'another long secret',
    });
    await service.as(joined.body.token, 'PATCH', '/settings', { units: 'us' });
    await service.as(dealer.token, 'DELETE', `/people/${id}`);
  });
  const { name } = dealer.person;
  expect(noted.map(({ act, by }) => [act, by])).toEqual([
    ['person-added', name],
    ['invitation-made', name],
    ['person-joined', null],
    ['signed-in', 'Ines'],
    ['role-changed', name],
    ['password-changed', 'Ines'],
    ['settings-changed', 'Ines'],
    ['person-removed', name],
  ]);
  expect(noted[0].details).toEqual({ email, name: 'Ines', role: 'owner' });
  expect(JSON.stringify(noted)).not.toMatch(/argon|hash/);
});

test('grants, loggers and services, also of a visitor', async () => {
  const visitor = await service.newAccount();
  const noted = await notedBy(async () => {
    const body = { email: visitor.email, role: 'technician' };
    const grant = await service.as(dealer.token, 'POST', `/coaches/${fleet.coachId}/grants`, body);
    const id = await newService(service, { ...fleet, token: visitor.token }, dayAt(3));
    await service.as(visitor.token, 'PATCH', `/services/${id}`, { notes: 'Soap.' });
    await service.as(visitor.token, 'DELETE', `/services/${id}`);
    const logger = await service.as(visitor.token, 'POST', `/coaches/${fleet.coachId}/loggers`, {
      name: 'Shunt',
      sensor: 'shunt',
    });
    await service.as(visitor.token, 'DELETE', `/loggers/${logger.body.id}`);
    await service.as(dealer.token, 'DELETE', `/grants/${grant.body.id}`);
  });
  expect(noted.map(({ act }) => act)).toEqual([
    'grant-given',
    'service-recorded',
    'service-changed',
    'service-removed',
    'logger-added',
    'logger-removed',
    'grant-ended',
  ]);
  expect(noted[1].by).toBe(visitor.person.name);
  expect(
    (await service.as(visitor.token, 'GET', '/record')).body.items.map((one: { act: string }) => one.act),
  ).not.toContain('service-recorded');
});

test('times of what was done are told in UTC, also those that were noted in another zone', async () => {
  const { person, token } = await service.newAccount();
  const note = (minute: number, details: object) =>
    service.pool.query(
      `insert into record (account_id, at, act, thing, details)
       values ($1, clock_timestamp() - $2 * interval '1 minute', 'grant-given', 'grants', $3)`,
      [person.accountId, minute, details],
    );
  await note(1, { until: '2026-05-02T10:20:11.5-06:00', name: '2026-05-02T10:20:11.5-06:00' });
  await note(2, { at: '2026-05-02T16:20:11+00:00', side: null });
  await note(3, { started_at: '0001-12-31T17:00:00-07:00 BC' });
  const { body } = await service.as(token, 'GET', '/record?acts=grant-given');
  expect(body.items.map(({ details }: { details: object }) => details)).toEqual([
    { until: '2026-05-02T16:20:11.500Z', name: '2026-05-02T10:20:11.5-06:00' },
    { at: '2026-05-02T16:20:11.000Z', side: null },
    { started_at: '0001-12-31T17:00:00-07:00 BC' },
  ]);
});

test('what is refused is not noted', async () => {
  const noted = await notedBy(async () => {
    await service.as(dealer.token, 'POST', '/people', { email: dealer.email, name: 'Twice', role: 'owner' });
    await service.as(dealer.token, 'DELETE', `/coaches/${randomUUID()}`);
  });
  expect(noted).toEqual([]);
});

test('is read in pages, by time, and as a table', async () => {
  const all = await acts();
  const walked: unknown[] = [];
  for (let cursor = ''; ; ) {
    const page = await service.as(dealer.token, 'GET', `/record?limit=3${cursor}`);
    walked.push(...page.body.items.map((one: { id: string }) => one.id));
    if (page.body.next === null) break;
    cursor = `&cursor=${page.body.next}`;
  }
  expect(walked).toEqual(all.map(({ id }) => id).reverse());
  expect(walked.filter((id) => uuidVersion(String(id)) !== 7)).toEqual([]);
  expect(new Set(walked).size).toBe(walked.length);
  // What version 7 is for: its first 48 bits are the instant.
  const [first] = all;
  expect(Number.parseInt(String(first?.id).replaceAll('-', '').slice(0, 12), 16)).toBe(
    Date.parse(String(first?.at)),
  );
  expect(await acts(`&to=${String(all[0].at).slice(0, 4)}-01-01T00:00:00Z`)).toEqual([]);
  const csv = await service.request('GET', '/record', {
    token: dealer.token,
    headers: { accept: 'text/csv' },
  });
  expect(csv.headers.get('content-type')).toContain('text/csv');
  expect(csv.text.split('\r\n')[0]).toBe('at,act,by,byId,thing,thingId,coachId,coachName,details');
  expect(csv.text.trim().split('\r\n').length).toBeGreaterThan(all.length);
});

test('is asked for some acts, and for one person', async () => {
  const all = await acts();
  const some = await acts('&acts=service-recorded,grant-given');
  expect(some).toEqual(all.filter(({ act }) => act === 'service-recorded' || act === 'grant-given'));
  expect(some.map(({ coachName }) => coachName)).toEqual(['Meadow Drift', 'Meadow Drift']);
  const own = await acts(`&personId=${dealer.person.id}`);
  const by = (one: Record<string, unknown>) => (one.by as { id: string } | null)?.id;
  expect(own).toEqual(all.filter((one) => by(one) === dealer.person.id));
  expect(own.length).toBeLessThan(all.length);
  for (const query of ["acts=a'b", 'acts=,', 'personId=mara'])
    expect((await service.as(dealer.token, 'GET', `/record?${query}`)).status).toBe(422);
});

test('is only added to', async () => {
  for (const change of [`update record set act = 'none'`, 'delete from record', 'truncate record'])
    await expect(service.pool.query(change)).rejects.toMatchObject({ code: '42501' });
});

test('every act that the database notes has its name on the pages, and is of one kind', async () => {
  const { rows } = await service.pool.query<{ act: string }>(
    `select distinct split_part(encode(tgargs, 'escape'), '\\000', 1) as act from pg_trigger
      where tgfoid = 'note_act'::regproc`,
  );
  const noted = [...rows.map(({ act }) => act), 'sign-in-failed'].sort();
  expect(Object.keys(recordWords.acts).sort()).toEqual(noted);
  expect(Object.values(ACTS_OF).flat().sort()).toEqual(noted);
});

test('as CSV it is whole or refused: more than a hundred thousand acts ask for a shorter span', async () => {
  const busy = await service.newAccount();
  await service.pool.query(
    `insert into record (account_id, at, act, thing)
     select $1, timestamptz '2026-01-01T00:00:00Z' + n * interval '1 second', 'signed-in', 'sessions'
     from generate_series(1, 100001) n`,
    [busy.person.accountId],
  );
  const { status, body } = await service.request('GET', '/record?to=2026-02-01T00:00:00Z', {
    token: busy.token,
    headers: { accept: 'text/csv' },
  });
  expect([status, body.errors?.[0].pointer]).toEqual([422, '/from']);
});
