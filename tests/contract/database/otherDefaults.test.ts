import pg from 'pg';
import { expect, inject, onTestFinished, test } from 'vitest';
import { openDatabase } from '../../../server/database/openDatabase.ts';
import { PLAIN_OWNER, plainOwnerUrl } from '../../../server/database/plainOwnerUrl.ts';
import { createDatabase } from '../../support/databases.ts';
import { startService } from '../../support/service.ts';
import { newFleet, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

/** What an administrator may have set for everybody on a server. */
const OTHERWISE = {
  timezone: 'America/Denver',
  datestyle: 'German, DMY',
  intervalstyle: 'sql_standard',
  bytea_output: 'escape',
  extra_float_digits: '0',
  standard_conforming_strings: 'off',
  default_transaction_isolation: 'repeatable read',
};

async function databaseSetOtherwise() {
  const database = await createDatabase(inject('postgresUrl'), inject('postgresTemplate'));
  const owner = new pg.Client(database.url);
  await owner.connect();
  const name = new URL(database.url).pathname.slice(1);
  const changes = Object.entries(OTHERWISE).map(
    ([setting, value]) => `alter database ${name} set ${setting} = ${pg.escapeLiteral(value)}`,
  );
  await owner.query(changes.join(';')).finally(() => owner.end());
  return database;
}

test('a database that is set otherwise for others serves as any other', async () => {
  const service = await startService({ database: await databaseSetOtherwise() });
  onTestFinished(() => service.stop());
  const token = await service.signIn();
  const fleet = await newFleet(service, token);
  const amps = [0.1, 1 / 3, 14.800000000000002];
  const sides = [{ side: 'front', rateHz: 50, amps }];
  const strokes = [strokeBody(fleet.roomId, 0), { ...strokeBody(fleet.roomId, 1), sides }];
  const [first, last] = await store(service, fleet, strokes);
  await settled(service, token, fleet.roomId);

  const read = async (path: string) => {
    const answer = await service.as(token, 'GET', path);
    expect(answer.status, `${path}: ${answer.text}`).toBe(200);
    return answer.body;
  };
  for (const path of ['/people', '/sessions', '/coaches', '/overview', '/warnings', '/account'])
    await read(path);
  const stroke = await read(`/strokes/${first}`);
  expect(stroke.startedAt).toBe(new Date(strokes[0].startedAt).toISOString());
  expect(Math.abs(Date.parse(stroke.receivedAt) - Date.now())).toBeLessThan(3_600_000);
  expect((await read(`/strokes/${last}/trace`)).sides).toEqual(sides);
  const trend = `/rooms/${fleet.roomId}/trend?measure=runningAmps&direction=${stroke.direction}&side=front`;
  expect((await read(trend)).points[0].at).toBe(stroke.startedAt);

  const work = { kind: 'cleaned', at: '2026-05-02T18:20:11+02:00' };
  expect((await service.as(token, 'POST', `/rooms/${fleet.roomId}/services`, work)).status).toBe(201);
  await service.as(token, 'DELETE', `/rooms/${fleet.roomId}`);
  const { items } = await read('/record');
  const times = items.flatMap(({ details }: { details: object }) => Object.values(details).filter(isTime));
  expect(times.length).toBeGreaterThan(0);
  for (const time of times) expect(time).toMatch(/Z$/);
});

function isTime(value: unknown): boolean {
  return typeof value === 'string' && /^\d{4}-\d\d-\d\dT/.test(value);
}

test('the same stroke from many at once is one there, too', async () => {
  const service = await startService({ database: await databaseSetOtherwise(), worker: false });
  onTestFinished(() => service.stop());
  const fleet = await newFleet(service, await service.signIn());
  const body = strokeBody(fleet.roomId, 0);
  const answers = await Promise.all(
    Array.from({ length: 20 }, () => service.as(fleet.loggerToken, 'POST', '/strokes', body)),
  );
  const outcomes = answers.map(({ body: told, text }) => told.results?.[0].outcome ?? text);
  expect(outcomes.sort()).toEqual([...Array.from({ length: 19 }, () => 'duplicate'), 'stored']);
});

test('what a connection is to be holds beside what the URL says, also for one that becomes another role', async () => {
  const database = await databaseSetOtherwise();
  onTestFinished(() => database.drop());
  const said = new URL(database.url);
  said.searchParams.set('options', '-c timezone=Asia/Tokyo -c search_path=public,pg_temp');
  const url = await plainOwnerUrl(said.href, console.error);
  for (const isDerived of [false, true]) {
    const { pool } = openDatabase(url, 1, { isDerived });
    const { rows } = await pool.query(`
      select current_user as role, current_setting('timezone') as zone, current_setting('search_path') as path,
        current_setting('default_transaction_isolation') as isolation, pg_settings.source
      from pg_settings where name = 'synchronous_commit'`);
    await pool.end();
    expect(rows).toEqual([
      {
        role: PLAIN_OWNER,
        zone: 'UTC',
        path: 'public,pg_temp',
        isolation: 'read committed',
        // Where it is left alone, the server's own setting holds.
        source: isDerived ? 'client' : expect.not.stringMatching('client'),
      },
    ]);
  }
});
