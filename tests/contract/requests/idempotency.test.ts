import { beforeAll, expect, test } from 'vitest';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
let token: string;
let stranger: Member;
let coach: string;

beforeAll(async () => {
  [token, stranger] = await Promise.all([service.signIn(), service.newAccount()]);
  coach = (await post('/coaches', { name: 'Fern' }, 'first')).body.id;
});

function post(path: string, body: object, key: string, as: string = token) {
  return service.request('POST', path, { token: as, body, headers: { 'idempotency-key': key } });
}

async function count(table: string): Promise<number> {
  const { rows } = await service.pool.query(`select count(*)::int as n from ${table}`);
  return rows[0].n;
}

test('the same key gets the first answer again, to the letter, and creates nothing', async () => {
  const body = { name: 'Clamp', sensor: 'clamp' };
  const first = await post(`/coaches/${coach}/loggers`, body, 'logger-1');
  const again = await post(`/coaches/${coach}/loggers`, { sensor: 'clamp', name: 'Clamp' }, 'logger-1');
  expect([again.status, again.text]).toEqual([first.status, first.text]);
  expect(again.headers.get('location')).toBe(first.headers.get('location'));
  expect(await count('loggers')).toBe(1);
  const kept = await service.pool.query("select string_agg(k::text, '') as text from idempotency_keys k");
  expect(kept.rows[0].text).not.toContain(Buffer.from('sll_').toString('hex'));
});

test('thirty at once create one', async () => {
  const before = await count('rooms');
  const body = { name: 'Living room', drive: 'cable', sides: ['main'] };
  const answers = await Promise.all(
    Array.from({ length: 30 }, () => post(`/coaches/${coach}/rooms`, body, 'room-1')),
  );
  expect(new Set(answers.map((answer) => `${answer.status} ${answer.text}`)).size).toBe(1);
  expect(answers[0]?.status).toBe(201);
  expect(await count('rooms')).toBe(before + 1);
});

test('another body with the key gets the first answer all the same, and a header says that it is no new one', async () => {
  const first = await post('/coaches', { name: 'One' }, 'other-body');
  const before = await count('coaches');
  const again = await post('/coaches', { name: 'Two', year: 2020 }, 'other-body');
  expect([again.status, again.text]).toEqual([201, first.text]);
  expect(again.headers.get('idempotency-replayed')).toBe('true');
  expect(first.headers.has('idempotency-replayed')).toBe(false);
  expect(await count('coaches')).toBe(before);
});

test('so does one that could create nothing, and with a key of its own it is told so', async () => {
  const first = await post('/coaches', { name: 'Sound' }, 'sound-first');
  for (const body of [{ name: '' }, { colour: 'beige' }, []]) {
    const again = await post('/coaches', body, 'sound-first');
    expect([again.status, again.text]).toEqual([201, first.text]);
    expect(again.headers.get('location')).toBe(first.headers.get('location'));
    expect((await post('/coaches', body, 'unsound')).status).toBe(422);
  }
  expect((await post('/coaches', { name: '' }, 'sound-first', stranger.token)).status).toBe(422);
  expect((await post(`/coaches/${coach}/rooms`, { name: '' }, 'sound-first')).status).toBe(422);
  await service.pool.query("update idempotency_keys set created_at = created_at - interval '25 hours'");
  expect((await post('/coaches', { name: '' }, 'sound-first')).status).toBe(422);
  expect((await post('/coaches', { name: 'Sound' }, 'unsound')).status).toBe(201);
});

test('the key at another address is refused', async () => {
  await post('/coaches', { name: 'One' }, 'reused');
  const answer = await post(`/coaches/${coach}/loggers`, { name: 'One', sensor: 'clamp' }, 'reused');
  expect([answer.status, answer.body.type]).toEqual([422, '/problems/idempotency-key-reused']);
});

test('the same address with its id in capitals is no other one', async () => {
  const body = { name: 'Clamp', sensor: 'clamp' };
  const first = await post(`/coaches/${coach}/loggers`, body, 'capitals');
  const again = await post(`/coaches/${coach.toUpperCase()}/loggers`, body, 'capitals');
  expect([again.status, again.text]).toEqual([201, first.text]);
});

test("a stranger's same key is another key", async () => {
  const mine = await post('/coaches', { name: 'Same' }, 'shared');
  const theirs = await post('/coaches', { name: 'Same' }, 'shared', stranger.token);
  expect(theirs.status).toBe(201);
  expect(theirs.body.id).not.toBe(mine.body.id);
});

test('a request that failed leaves its key free', async () => {
  const wrong = await post(`/coaches/${crypto.randomUUID()}/rooms`, ROOM, 'free');
  expect(wrong.status).toBe(404);
  expect((await post(`/coaches/${coach}/rooms`, ROOM, 'free')).status).toBe(201);
});

test('after 24 hours a key is free again', async () => {
  const first = await post('/coaches', { name: 'Daily' }, 'daily');
  await service.pool.query("update idempotency_keys set created_at = created_at - interval '25 hours'");
  const next = await post('/coaches', { name: 'Daily' }, 'daily');
  expect(next.status).toBe(201);
  expect(next.body.id).not.toBe(first.body.id);
  const again = await post('/coaches', { name: 'Daily' }, 'daily');
  expect(again.body.id).toBe(next.body.id);
});

test('a key of more than 255 characters is refused', async () => {
  expect((await post('/coaches', { name: 'Long' }, 'k'.repeat(256))).status).toBe(422);
});

const ROOM = { name: 'Den', drive: 'other', sides: ['main'] };
