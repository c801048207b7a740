import { parse } from 'csv-parse/sync';
import { v7 as newId } from 'uuid';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Verdict } from '../../../analysis/warning.ts';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
let member: Member;

beforeEach(async () => {
  member = await service.newAccount();
});

interface Made {
  readonly id: string;
  readonly rooms: readonly string[];
}

/** A coach whose rooms stand at these verdicts, heard so many days ago. */
async function addCoach(
  name: string,
  verdicts: readonly Verdict[],
  { model = 'Hallmoor 310', heardDaysAgo = 1 }: { model?: string; heardDaysAgo?: number } = {},
): Promise<Made> {
  const account_id = member.person.accountId;
  const id = newId();
  await service.db.insertInto('coaches').values({ account_id, id, name, model }).execute();
  await service.db
    .insertInto('loggers')
    .values({
      account_id,
      id: newId(),
      coach_id: id,
      name: 'Step board',
      sensor: 'clamp',
      token_hash: Buffer.from(newId()),
      last_seen_at: new Date(Date.now() - heardDaysAgo * 86_400_000),
    })
    .execute();
  const rooms: string[] = [];
  for (const [i, verdict] of verdicts.entries()) {
    const room = newId();
    rooms.push(room);
    const name = ['Bedroom', 'Dinette', 'Lounge'][i] ?? 'Den';
    await service.db
      .insertInto('rooms')
      .values({ account_id, id: room, coach_id: id, name, drive: 'other', sides: ['main'] })
      .execute();
    const summary = JSON.stringify({ verdict, headline: `=It is ${verdict}.` });
    await service.db.insertInto('room_results').values({ account_id, room_id: room, summary }).execute();
  }
  return { id, rooms };
}

/** The room was said to be something else until `at`. */
const changed = (room: string | undefined, at: string, before: Verdict, after: Verdict) =>
  service.db
    .insertInto('verdict_changes')
    .values({
      account_id: member.person.accountId,
      room_id: room ?? '',
      changed_at: at,
      verdict_before: before,
      verdict: after,
    })
    .execute();

const read = (query: string, headers: Record<string, string> = {}) =>
  service.request('GET', `/overview${query}`, { token: member.token, headers });
const names = async (query: string): Promise<string[]> =>
  (await read(query)).body.items.map((coach: { name: string }) => coach.name);

describe('the overview', () => {
  beforeEach(async () => {
    await addCoach('Calm', ['clear', 'clear'], { heardDaysAgo: 3 });
    await addCoach('Alarming', ['clear', 'stop'], { model: 'Brackenfold 36' });
    await addCoach('Worn', ['service'], { heardDaysAgo: 20 });
    await addCoach('Bare', []);
  });

  test('comes in the order that was asked for', async () => {
    expect(await names('')).toEqual(['Alarming', 'Worn', 'Calm', 'Bare']);
    expect(await names('?sort=name')).toEqual(['Alarming', 'Bare', 'Calm', 'Worn']);
    expect(await names('?sort=heard')).toEqual(['Worn', 'Calm', 'Alarming', 'Bare']);
    expect(await names('?sort=newest')).toEqual(['Bare', 'Worn', 'Alarming', 'Calm']);
  });

  test.each(['concern', 'name', 'heard', 'newest'])(
    'comes by pages as it comes whole, by %s',
    async (sort) => {
      const found: string[] = [];
      let cursor = '';
      do {
        const page = await read(`?sort=${sort}&limit=1${cursor}`);
        found.push(...page.body.items.map((coach: { name: string }) => coach.name));
        cursor = page.body.next === null ? '' : `&cursor=${encodeURIComponent(page.body.next)}`;
      } while (cursor !== '');
      expect(found).toEqual(await names(`?sort=${sort}`));
    },
  );

  test.each([
    ['?q=alar', ['Alarming']],
    ['?q=BRACKEN', ['Alarming']],
    ['?q=dinette', ['Alarming', 'Calm']],
    ['?q=%25', []],
    ['?model=Hallmoor%20310', ['Worn', 'Calm', 'Bare']],
    ['?verdict=clear', ['Alarming', 'Calm']],
    ['?verdict=clear&room=Dinette', ['Calm']],
    ['?room=Dinette', ['Alarming', 'Calm']],
    ['?silent=true', ['Worn']],
    ['?silent=false&verdict=stop', ['Alarming']],
  ])('holds what %s asks for', async (query, expected) => {
    expect(await names(query)).toEqual(expected);
  });

  test('says in which role a coach is seen, and who is silent', async () => {
    const [worn] = (await read('?q=worn')).body.items;
    expect(worn).toMatchObject({ role: 'dealer', loggers: [{ name: 'Step board', silent: true }] });
    expect(worn.lastHeardAt).toBe(worn.loggers[0].lastHeardAt);
    const owner = await service.newMember(member, 'owner');
    const seen = await service.as(owner.token, 'GET', '/overview?q=worn');
    expect(seen.body.items[0].role).toBe('owner');
  });

  test.each([
    'sort=worst',
    'verdict=bad',
    'silent=maybe',
    'changed=true',
    'since=yesterday',
    'coaches=1,2',
    'cursor=%00',
    `sort=heard&cursor=${cursorOf('heard', '[1e999,"x","01900000-0000-7000-8000-000000000000"]')}`,
    `cursor=${cursorOf('concern', '[1,"\\u0000","01900000-0000-7000-8000-000000000000"]')}`,
  ])('refuses %s', async (query) => {
    expect((await read(`?${query}`)).status).toBe(422);
  });

  test.each([
    ['concern', 1.5],
    ['concern', 40_000],
    ['concern', -1],
    ['concern', 1e300],
    ['name', 1],
    ['name', 1795132523.25],
  ])('refuses to go on by %s after %d, which that order never says', async (sort, rank) => {
    const place = JSON.stringify([rank, 'x', '01900000-0000-7000-8000-000000000000']);
    const answer = await read(`?sort=${sort}&cursor=${cursorOf(sort, place)}`);
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/cursor']);
  });

  test.each(['heard', 'newest'])('goes on by %s after whatever number there is', async (sort) => {
    for (const rank of [1.5, -1e300, 1e300]) {
      const place = JSON.stringify([rank, 'x', '01900000-0000-7000-8000-000000000000']);
      const answer = await read(`?sort=${sort}&cursor=${cursorOf(sort, place)}`);
      expect(answer.status).toBe(200);
    }
  });

  test('is a table for those who ask for one, in which nothing is a formula', async () => {
    await addCoach('=HYPERLINK("x")', ['clear']);
    const table = await read('?sort=name', { accept: 'text/csv' });
    expect(table.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    const rows = parse(table.text, { columns: true }) as Record<string, string>[];
    expect(rows.map((row) => [row.coach, row.room, row.verdict])).toEqual([
      [`'=HYPERLINK("x")`, 'Bedroom', 'clear'],
      ['Alarming', 'Bedroom', 'clear'],
      ['Alarming', 'Dinette', 'stop'],
      ['Bare', '', ''],
      ['Calm', 'Bedroom', 'clear'],
      ['Calm', 'Dinette', 'clear'],
      ['Worn', 'Bedroom', 'service'],
    ]);
    expect(rows[0].headline).toBe("'=It is clear.");
  });
});

describe('what changed since a moment', () => {
  const SINCE = '2026-05-01T00:00:00Z';
  beforeEach(async () => {
    const worse = await addCoach('Worse', ['service', 'clear']);
    const cleared = await addCoach('Cleared', ['clear']);
    const better = await addCoach('Better', ['watch']);
    const back = await addCoach('There and back', ['clear']);
    const long = await addCoach('Long ago', ['stop']);
    await changed(worse.rooms[0], '2026-05-02T00:00:00Z', 'clear', 'watch');
    await changed(worse.rooms[0], '2026-05-03T00:00:00Z', 'watch', 'service');
    await changed(cleared.rooms[0], '2026-05-02T00:00:00Z', 'watch', 'clear');
    await changed(better.rooms[0], '2026-05-02T00:00:00Z', 'stop', 'watch');
    await changed(back.rooms[0], '2026-05-02T00:00:00Z', 'clear', 'watch');
    await changed(back.rooms[0], '2026-05-03T00:00:00Z', 'watch', 'clear');
    await changed(long.rooms[0], '2026-04-02T00:00:00Z', 'clear', 'stop');
  });

  test('is told room by room', async () => {
    const { items } = (await read(`?since=${SINCE}`)).body;
    const before = items.map((coach: { name: string; rooms: { verdictBefore: string | null }[] }) => [
      coach.name,
      ...coach.rooms.map((room) => room.verdictBefore),
    ]);
    expect(before).toEqual([
      ['Long ago', null],
      ['Worse', 'clear', null],
      ['Better', 'stop'],
      ['Cleared', 'watch'],
      ['There and back', null],
    ]);
    expect(await names(`?since=${SINCE}&changed=true&sort=name`)).toEqual(['Better', 'Cleared', 'Worse']);
  });

  test('is counted, with all that is seen', async () => {
    const summary = await service.as(member.token, 'GET', `/overview/summary?since=${SINCE}`);
    expect(summary.body).toEqual({
      coaches: 5,
      rooms: { learning: 0, clear: 3, watch: 1, service: 1, stop: 1, unknown: 0 },
      silentLoggers: 0,
      models: ['Hallmoor 310'],
      roomNames: ['Bedroom', 'Dinette'],
      changes: { worse: 1, better: 1, cleared: 1, arrived: 5 },
    });
    const all = await service.as(member.token, 'GET', '/overview/summary');
    expect(all.body.changes).toBeNull();
  });
});

test('two spellings of one model are one, by the more common of them', async () => {
  await addCoach('Worn', ['watch']);
  await addCoach('Calm', ['clear']);
  await addCoach('Spelt otherwise', ['clear'], { model: 'hallmoor 310' });
  await addCoach('Another', ['clear'], { model: 'Brackenfold 36' });
  const { body } = await service.as(member.token, 'GET', '/overview/summary');
  expect(body.models).toEqual(['Brackenfold 36', 'Hallmoor 310']);
  for (const model of ['Hallmoor 310', 'hallmoor 310'])
    expect(await names(`?model=${encodeURIComponent(model)}&sort=name`)).toEqual([
      'Calm',
      'Spelt otherwise',
      'Worn',
    ]);
});

describe('acknowledging many', () => {
  const warn = async (roomId: string | undefined) => {
    const id = newId();
    const texts = { headline: 'It draws more.', evidence: '{}', checks: '[]', cautions: '[]' };
    await service.db
      .insertInto('warnings')
      .values({
        account_id: member.person.accountId,
        id,
        room_id: roomId ?? '',
        kind: 'rising-draw',
        severity: 'watch',
        opened_at: new Date(),
        first_stroke_id: newId(),
        latest_stroke_id: newId(),
        ...texts,
      })
      .execute();
    return id;
  };
  const acknowledge = (body: object, token = member.token) =>
    service.as(token, 'POST', '/acknowledgements', body);

  test('takes warnings and whole coaches, and leaves what was acknowledged before', async () => {
    const coach = await addCoach('Worn', ['watch', 'watch']);
    const other = await addCoach('Other', ['watch']);
    const ids = [await warn(coach.rooms[0]), await warn(coach.rooms[1]), await warn(other.rooms[0])];
    await service.as(member.token, 'POST', `/warnings/${ids[0]}/acknowledgement`, { note: 'First.' });
    const done = await acknowledge({ coaches: [coach.id], warnings: [ids[2], newId()], note: 'Booked.' });
    expect(done.status).toBe(200);
    expect([...done.body.acknowledged].sort()).toEqual([ids[1], ids[2]].sort());
    const { items } = (await service.as(member.token, 'GET', '/warnings')).body;
    expect(
      Object.fromEntries(
        items.map((w: { id: string; acknowledgement: { note: string } }) => [w.id, w.acknowledgement.note]),
      ),
    ).toEqual({
      [String(ids[0])]: 'First.',
      [String(ids[1])]: 'Booked.',
      [String(ids[2])]: 'Booked.',
    });
    expect((await acknowledge({ coaches: [coach.id] })).body.acknowledged).toEqual([]);
  });

  test("leaves a stranger's alone", async () => {
    const coach = await addCoach('Worn', ['watch']);
    const id = await warn(coach.rooms[0]);
    const stranger = await service.newAccount();
    const tried = await acknowledge({ coaches: [coach.id], warnings: [id] }, stranger.token);
    expect(tried.body.acknowledged).toEqual([]);
    expect((await service.as(member.token, 'GET', '/warnings?state=open')).body.items).toHaveLength(1);
  });

  test.each([{ coaches: 'all' }, { warnings: ['x'] }, { note: 7 }, { rooms: [] }])(
    'refuses %o',
    async (body) => {
      expect((await acknowledge(body)).status).toBe(422);
    },
  );
});

/** As the answer that ends at such a place in that order has it. */
function cursorOf(sort: string, place: string): string {
  return Buffer.from(`["overview/${sort}",${place}]`).toString('base64url');
}
