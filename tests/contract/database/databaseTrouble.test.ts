import pg from 'pg';
import { expect, inject, test } from 'vitest';
import type { Answer } from '../../support/request.ts';
import { FIRST_PERSON } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests, send, settled, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const fleet = fleetOfTests(service);

function expectUnavailable(answer: Answer): void {
  expect([answer.status, answer.body?.type], answer.text).toEqual([503, '/problems/unavailable']);
  expect(answer.headers.get('content-type')).toContain('application/problem+json');
  expect(Number(answer.headers.get('retry-after'))).toBeGreaterThan(0);
}

/** By a connection of its own, which no trouble of the service touches. */
async function administer(work: (client: pg.Client) => Promise<void>, database?: string): Promise<void> {
  const url = new URL(service.databaseUrl);
  if (database !== undefined) url.pathname = database;
  const client = new pg.Client(url.href);
  await client.connect();
  await work(client).finally(() => client.end());
}

const SIGN_IN = { email: FIRST_PERSON.email, password: FIRST_PERSON.password };

/** One request of each kind: reading, signing in, changing, sending. */
const requests = (key: string): Promise<Answer>[] => [
  service.as(fleet.token, 'GET', '/coaches'),
  service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/trend?measure=lagS&direction=extend`),
  service.request('POST', '/session', { body: SIGN_IN }),
  service.as(fleet.token, 'PATCH', `/loggers/${fleet.loggerId}`, { clockOffsetS: 1 }),
  service.request('POST', '/coaches', {
    token: fleet.token,
    body: { name: key },
    headers: { 'idempotency-key': key },
  }),
  send(service, fleet.loggerToken, strokeBody(fleet.roomId, 1, 9, { key })),
];

test('a disk that is full at the samples: 503, nothing half-stored, and stored once there is room', async () => {
  // SQLSTATE 53100 is what Postgres says where a file cannot be extended.
  await administer(async (client) => {
    await client.query(`create function no_room() returns trigger language plpgsql as
      $$ begin raise exception 'could not extend file: No space left on device' using errcode = '53100'; end $$`);
    await client.query(
      'create trigger no_room before insert on traces for each row execute function no_room()',
    );
  });
  const batch = [1, 2, 3].map((day) => strokeBody(fleet.roomId, day));
  for (const answer of await Promise.all([1, 2, 3, 4].map(() => send(service, fleet.loggerToken, batch)))) {
    expectUnavailable(answer);
  }
  const counts = `select (select count(*) from strokes)::integer as strokes, (select count(*) from traces)::integer as traces`;
  expect((await service.pool.query(counts)).rows).toEqual([{ strokes: 0, traces: 0 }]);
  expect((await service.request('GET', '/healthz')).status).toBe(200);
  await administer(async (client) => {
    await client.query('drop trigger no_room on traces');
  });
  const outcomes = (await send(service, fleet.loggerToken, batch)).body.results;
  expect(outcomes.map(({ outcome }: { outcome: string }) => outcome)).toEqual(['stored', 'stored', 'stored']);
  await settled(service, fleet.token, fleet.roomId);
});

test('locks that somebody holds, and no connection left: 503 within seconds, and all well after', async () => {
  await administer(async (client) => {
    await client.query('begin');
    await client.query('lock table strokes, coaches, sessions, loggers in access exclusive mode');
    const answers = await Promise.all([1, 2, 3, 4].flatMap((n) => requests(`held ${n}`)));
    for (const answer of answers) {
      // Whoever needs none of those tables may be served, once there is a connection.
      if (answer.status !== 200) expectUnavailable(answer);
    }
    expect(answers.filter(({ status }) => status === 503).length).toBeGreaterThan(15);
    expect((await service.request('GET', '/healthz')).status).toBe(200);
    await client.query('rollback');
  });
  for (const answer of await Promise.all(requests('free')))
    expect(answer.status, answer.text).toBeLessThan(300);
});

test('a database that takes nobody in: 503 meanwhile, and all well after', async () => {
  const name = new URL(service.databaseUrl).pathname.slice(1);
  await administer(
    async (client) => {
      await client.query(`alter database ${name} allow_connections false`);
      try {
        await client.query('select pg_terminate_backend(pid) from pg_stat_activity where datname = $1', [
          name,
        ]);
        for (const answer of await Promise.all(requests('shut'))) expectUnavailable(answer);
      } finally {
        await client.query(`alter database ${name} allow_connections true`);
      }
    },
    new URL(inject('postgresUrl')).pathname,
  );
  for (const answer of await Promise.all(requests('open')))
    expect(answer.status, answer.text).toBeLessThan(300);
});

test('a database that vanishes and returns: 503 meanwhile, also of readyz, and all well after', async () => {
  const name = new URL(service.databaseUrl).pathname.slice(1);
  const server = new URL(inject('postgresUrl')).pathname;
  await administer(async (client) => {
    // Who is connected is cut off; the service may come back between the two, so both are done until they stick.
    for (let renamed = false; !renamed; ) {
      await client.query('select pg_terminate_backend(pid) from pg_stat_activity where datname = $1', [name]);
      renamed = await client.query(`alter database ${name} rename to ${name}_aside`).then(
        () => true,
        (error: { code?: string }) => {
          // 55006: somebody is connected.
          if (error.code !== '55006') throw error;
          return false;
        },
      );
    }
    try {
      for (const answer of await Promise.all(requests('away'))) expectUnavailable(answer);
      expectUnavailable(await service.request('GET', '/readyz'));
      expect((await service.request('GET', '/healthz')).status).toBe(200);
    } finally {
      await client.query(`alter database ${name}_aside rename to ${name}`);
    }
  }, server);
  for (const answer of await Promise.all(requests('back')))
    expect(answer.status, answer.text).toBeLessThan(300);
  expect((await service.request('GET', '/readyz')).status).toBe(200);
  expect((await settled(service, fleet.token, fleet.roomId)).pending).toBe(0);
});
