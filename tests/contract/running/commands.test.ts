import { mkdtemp, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { createDatabase } from '../../support/databases.ts';
import { runCommand } from '../../support/runCommand.ts';
import { startService, type TestService } from '../../support/service.ts';
import {
  dayAt,
  type Fleet,
  newFleet,
  newService,
  settled,
  store,
  strokeBody,
} from '../strokes/strokeFixture.ts';
import { newRoomOf } from '../work/lentFixture.ts';

let service: TestService;
let fleet: Fleet;
let folder: string;
const databases: { drop(): Promise<void> }[] = [];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'slideload-commands-'));
  service = await startService();
  fleet = await newFleet(service, await service.signIn());
  const days = Array.from({ length: 20 }, (_, day) => strokeBody(fleet.roomId, day));
  const [first] = await store(service, fleet, days);
  await newService(service, fleet, dayAt(17.5));
  await service.as(fleet.token, 'PATCH', `/strokes/${first}`, {
    excluded: true,
    note: 'Leant on the room; it "bound"\n\ttwice.',
  });
  await settled(service, fleet.token, fleet.roomId);
});
afterAll(async () => {
  await service?.stop();
  for (const { drop } of databases) await drop();
  await rm(folder, { recursive: true, force: true });
});

async function emptyDatabase(template?: string): Promise<string> {
  const database = await createDatabase(inject('postgresUrl'), template);
  databases.push(database);
  return database.url;
}

async function backUp(name: string): Promise<string> {
  const file = join(folder, name);
  const { code, err } = await runCommand(service.databaseUrl, 'backup', file);
  if (code !== 0) throw new Error(err);
  return file;
}

describe('backup and restore', () => {
  test('everything comes back to the last digit, into an empty database, by another backup of it', async () => {
    const file = await backUp('whole.tar.gz');
    const url = await emptyDatabase();
    const restored = await runCommand(url, 'restore', file, '--json');
    expect(restored.err).toBe('');
    const { tables } = JSON.parse(restored.out);
    expect(tables.strokes.rows).toBe(20);
    expect(tables.traces.rows).toBe(20);
    expect(tables.measures.rows).toBe(40);
    const again = await runCommand(url, 'backup', join(folder, 'again.tar.gz'), '--json');
    expect(JSON.parse(again.out).tables).toEqual(tables);
  });

  test('a database that is in use is left alone', async () => {
    const file = await backUp('other.tar.gz');
    const before = await service.pool.query('select count(*) from strokes');
    const { code, err } = await runCommand(service.databaseUrl, 'restore', file);
    expect([code, err]).toEqual([1, expect.stringContaining('in use already')]);
    expect((await service.pool.query('select count(*) from strokes')).rows).toEqual(before.rows);
  });

  test.each(['backup', 'export'])('a file that is there is not written over by %s', async (command) => {
    const file = await backUp(`kept from ${command}.tar.gz`);
    const before = await readFile(file);
    const { code, err } = await runCommand(service.databaseUrl, command, file);
    expect([code, err]).toEqual([1, expect.stringContaining('there already')]);
    expect(await readFile(file)).toEqual(before);
  });

  test.each([
    ['cut short', async (file: string) => truncate(file, 2000)],
    [
      'one digit changed',
      async (file: string) => {
        const tar = gunzipSync(await readFile(file));
        const at = tar.indexOf('bound');
        tar.write('found', at);
        await writeFile(file, gzipSync(tar));
      },
    ],
    ['something else', async (file: string) => writeFile(file, 'key,amps\n1,2\n')],
  ])('a backup that is %s is refused before anything is written', async (_, spoil) => {
    const file = await backUp(`spoilt ${_}.tar.gz`);
    await spoil(file);
    const url = await emptyDatabase();
    const { code, err } = await runCommand(url, 'restore', file);
    expect(code).toBe(1);
    expect(err).toMatch(/^It (is damaged|cannot be read|is cut short)/);
    expect(err.trim().split('\n')).toHaveLength(1);
    const restored = await runCommand(url, 'doctor', '--json');
    expect(restored.out).toContain('The database is empty.');
  });
});

describe('export and import', () => {
  const changed = (from: string, to: string) => (whole: Buffer) => {
    const tar = gunzipSync(whole);
    tar.write(to, tar.indexOf(from));
    return gzipSync(tar);
  };
  test.each<[string, (whole: Buffer) => Buffer, string]>([
    [
      'cut short',
      (whole) => whole.subarray(0, whole.length / 2),
      'It cannot be read: unexpected end of file.',
    ],
    ['no JSON', changed('{', '?'), 'export.json is no JSON.'],
    ['of another kind', changed('"drive"', '"dribe"'), 'cannot be read: '],
  ])('an export that is %s is refused', async (name, spoil, says) => {
    const file = join(folder, `lot ${name}.tar.gz`);
    expect((await runCommand(service.databaseUrl, 'export', file)).code).toBe(0);
    await writeFile(file, spoil(await readFile(file)));
    const { code, err } = await runCommand(service.databaseUrl, 'import', file);
    expect([code, err]).toEqual([1, expect.stringContaining(says)]);
  });

  test('another installation makes the same results of it, and nothing more the second time', async () => {
    const file = join(folder, 'lot.tar.gz');
    const exported = await runCommand(service.databaseUrl, 'export', file, '--json');
    expect(JSON.parse(exported.out)).toEqual({ file, coaches: 1, rooms: 1, strokes: 20 });
    const other = await startService();
    try {
      const first = await runCommand(other.databaseUrl, 'import', file, '--json');
      expect(first.err).toBe('');
      const counts = { coaches: 1, rooms: 1, services: 1, stored: 20, duplicate: 0 };
      expect(JSON.parse(first.out)).toMatchObject(counts);
      const second = await runCommand(other.databaseUrl, 'import', file, '--json');
      expect(JSON.parse(second.out)).toEqual({
        coaches: 0,
        rooms: 0,
        services: 0,
        stored: 0,
        duplicate: 20,
        loggers: [],
      });
      const token = await other.signIn();
      await settled(other, token, fleet.roomId);
      for (const path of [
        'status',
        'strokes',
        'services',
        'trend?measure=runningAmps&direction=extend&side=front',
      ]) {
        const [here, there] = await Promise.all([
          service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/${path}`),
          other.request('GET', `/rooms/${fleet.roomId}/${path}`, { token }),
        ]);
        expect(withoutArrival(there.body)).toEqual(withoutArrival(here.body));
      }
      const [{ id }] = (await other.request('GET', `/rooms/${fleet.roomId}/strokes`, { token })).body.items;
      const traces = await Promise.all([
        service.as(fleet.token, 'GET', `/strokes/${id}/trace`),
        other.request('GET', `/strokes/${id}/trace`, { token }),
      ]);
      expect(traces[1].text).toBe(traces[0].text);
    } finally {
      await other.stop();
    }
  });

  test('a folder of recordings of a room with one side need not name it', async () => {
    const lone = await newRoomOf(service, fleet.token, { sides: ['kerb'] });
    const recordings = await mkdtemp(join(folder, 'recordings-'));
    await writeFile(join(recordings, '2026-07-01T10-00-00Z.csv'), 't,current_a\n0,1\n1,2\n');
    const words = ['import', recordings, '--room', lone.roomId, '--direction', 'extend', '--json'];
    const { out } = await runCommand(service.databaseUrl, ...words);
    expect(JSON.parse(out)).toEqual({ stored: 1, duplicate: 0, refused: [] });
  });

  test('a folder of recordings becomes strokes, each file once, and names what it refuses', async () => {
    const recordings = await mkdtemp(join(folder, 'recordings-'));
    const amps = strokeBody(fleet.roomId, 0).sides[0].amps;
    const lines = amps.map((value, i) => `${i / 50},${value}`);
    await writeFile(join(recordings, '2026-07-01T10-00-00Z.csv'), `time_s,front_a\n${lines.join('\n')}\n`);
    await writeFile(join(recordings, 'notes.csv'), 'when,what\nnoon,nothing\n');
    const words = ['import', recordings, '--room', fleet.roomId, '--direction', 'extend', '--json'];
    const first = await runCommand(service.databaseUrl, ...words);
    const result = JSON.parse(first.out);
    expect(result).toMatchObject({ stored: 1, duplicate: 0 });
    expect(result.refused).toEqual([{ file: 'notes.csv', why: expect.any(String) }]);
    expect(first.code).toBe(1);
    const again = await runCommand(service.databaseUrl, ...words);
    expect(JSON.parse(again.out)).toMatchObject({ stored: 0, duplicate: 1 });
    const { body } = await service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/strokes?limit=1`);
    expect(body.items[0]).toMatchObject({ startedAt: '2026-07-01T10:00:00.000Z', loggerId: fleet.loggerId });
  });
});

describe('a deleted coach', () => {
  test('is no part of an export, takes no recordings, and is not silent', async () => {
    const gone = await newRoomOf(service, fleet.token, { sides: ['kerb'] });
    await service.pool.query(`update loggers set last_seen_at = now() - interval '31 days' where id = $1`, [
      gone.loggerId,
    ]);
    await service.as(fleet.token, 'DELETE', `/coaches/${gone.coachId}`);
    const run = (...words: string[]) => runCommand(service.databaseUrl, ...words);

    const file = join(folder, 'left.tar.gz');
    expect((await run('export', file)).code).toBe(0);
    const archive = gunzipSync(await readFile(file));
    expect([archive.includes(fleet.coachId), archive.includes(gone.coachId)]).toEqual([true, false]);

    const alone = join(folder, 'alone.tar.gz');
    const refused = await run('export', alone, '--coach', gone.coachId);
    expect([refused.code, refused.err]).toEqual([1, `The account has no coach ${gone.coachId}.`]);
    await expect(readFile(alone)).rejects.toThrow('ENOENT');

    const recordings = await mkdtemp(join(folder, 'recordings-'));
    await writeFile(join(recordings, '2026-07-01T10-00-00Z.csv'), 't,current_a\n0,1\n1,2\n');
    const imported = await run('import', recordings, '--room', gone.roomId, '--direction', 'extend');
    expect([imported.code, imported.err]).toEqual([1, expect.stringContaining('There is no room')]);

    expect((await run('doctor')).out).not.toContain('have not been heard');
  });

  test('what is no id of a coach is told in words', async () => {
    const { code, err } = await runCommand(
      service.databaseUrl,
      'export',
      join(folder, 'x.gz'),
      '--coach',
      'x',
    );
    expect([code, err]).toEqual([1, 'x is no id of a coach.']);
  });
});

describe('people and doctor', () => {
  test('a person who was added joins by the link', async () => {
    const words = ['people', 'add', '--email', 'Ines@example.com', '--name', 'Ines', '--role', 'technician'];
    const { out } = await runCommand(service.databaseUrl, ...words, '--json');
    const { invitation, person } = JSON.parse(out);
    expect(person).toMatchObject({ email: 'ines@example.com', role: 'technician', joined: false });
    const password = 'long enough for everyone';
    const joined = await service.request('POST', `/invitations/${invitation}`, { body: { password } });
    expect(joined.status).toBe(200);
    expect(joined.body.person.accountId).toBe(person.accountId);
  });

  test.each([
    ['backup', 'b.tar.gz'],
    ['export', 'e.tar.gz'],
    ['people', 'add', '--email', 'ines@example.com', '--name', 'Ines'],
  ])('on a database without tables %s says so in one line', async (...words) => {
    const url = await emptyDatabase();
    const { code, err } = await runCommand(url, ...words);
    expect([code, err.split('\n').length]).toEqual([1, 1]);
    expect(err).toMatch(/^The database (is empty|has not the tables)/);
  });

  test('a folder that is not there is told in one line', async () => {
    const { code, err } = await runCommand(service.databaseUrl, 'export', join(folder, 'none', 'e.tar.gz'));
    expect([code, err.split('\n').length]).toEqual([1, 1]);
    expect(err).toContain('no such file or directory');
  });

  test('what was typed wrongly is told in words, without a trace of the program', async () => {
    const { code, err } = await runCommand(
      service.databaseUrl,
      'people',
      'add',
      '--email',
      'x',
      '--name',
      'X',
    );
    expect(code).toBe(1);
    expect(err).toBe('--email: Must be an e-mail address, such as name@example.com.');
  });

  test('a sound installation has nothing broken; a stroke that was set aside is named', async () => {
    const sound = JSON.parse((await runCommand(service.databaseUrl, 'doctor', '--json')).out);
    expect(sound.findings.length).toBeGreaterThan(5);
    const settings = /fsync/;
    const broken = sound.findings.filter(
      ({ state, what }: { state: string; what: string }) => state === 'broken' && !settings.test(what),
    );
    expect(broken).toEqual([]);
    const { rows } = await service.pool.query('select id from strokes limit 1');
    const poisoned = { status: 'unusable', reason: 'The record could not be judged.' };
    await service.pool.query('update strokes set analysis = $1 where id = $2', [poisoned, rows[0].id]);
    const { out } = await runCommand(service.databaseUrl, 'doctor');
    expect(out).toContain(rows[0].id);
  });

  test('without a database that can be reached, doctor says so and ends with 1', async () => {
    const { code, out } = await runCommand('postgres://nobody@127.0.0.1:1/none', 'doctor');
    expect(code).toBe(1);
    expect(out).toMatch(/BROKEN +The database cannot be used/);
  });
});

/** Less what differs because the strokes came at another time. */
function withoutArrival(body: { items?: object[] }): unknown {
  return JSON.parse(
    JSON.stringify(body, (key, value) => (['receivedAt', 'updatedAt'].includes(key) ? undefined : value)),
  );
}
