import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { buildApp } from '../../../server/app.ts';
import type { App } from '../../../server/appTypes.ts';
import { sendRequest } from '../../support/request.ts';
import { FIRST_PERSON, type Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
let member: Member;

beforeEach(async () => {
  member = await service.newAccount();
});

function signIn(email: string, password: string, headers: Record<string, string> = {}) {
  return service.request('POST', '/session', { body: { email, password }, headers });
}

function cookieOf(answer: { headers: Headers }): string {
  return answer.headers.getSetCookie()[0] ?? '';
}

describe('signing in', () => {
  test('answers the person, a token and a cookie that scripts cannot read', async () => {
    const answer = await signIn(member.email.toUpperCase(), member.password);
    expect(answer.status).toBe(200);
    expect(answer.body).toEqual({ person: member.person, token: expect.stringMatching(/^slp_[\w-]{64}$/) });
    expect(cookieOf(answer)).toMatch(/^session=slp_[^;]+; Path=\/; Expires=[^;]+; HttpOnly; SameSite=Lax$/);
    expect(answer.headers.get('cache-control')).toBe('no-store');
  });

  test('gives a secure cookie over https', async () => {
    const answer = await signIn(member.email, member.password, { 'x-forwarded-proto': 'https' });
    const cookie = cookieOf(answer);
    expect(cookie).toMatch(/^__Host-session=slp_[^;]+; Path=\/; [^;]+; HttpOnly; Secure; SameSite=Lax$/);
    expect(cookie).not.toMatch(/domain/i);
    const read = (sent: string, protocol: string) =>
      service.request('GET', '/session', { headers: { cookie: sent, 'x-forwarded-proto': protocol } });
    const own = cookie.split(';')[0] ?? '';
    expect((await read(own, 'https')).body).toEqual({ person: member.person });
    // Another site of the same domain could set one without the prefix.
    expect((await read(`session=${answer.body.token}`, 'https')).status).toBe(401);
    expect((await read(`session=${answer.body.token}`, 'http')).status).toBe(200);
    const headers = { cookie: own, 'x-forwarded-proto': 'https' };
    const ended = await service.request('DELETE', '/session', { headers });
    expect([ended.status, cookieOf(ended)]).toEqual([204, expect.stringMatching(/^__Host-session=; /)]);
  });

  test('again in the same browser ends the session that was there', async () => {
    const first = await signIn(member.email, member.password);
    const cookie = cookieOf(first).split(';')[0];
    const second = await signIn(member.email, member.password, { cookie });
    const status = async (token: string) => (await service.as(token, 'GET', '/session')).status;
    expect([await status(first.body.token), await status(second.body.token)]).toEqual([401, 200]);
    // Another person's cookie is nobody else's to end.
    const other = await service.newAccount();
    await signIn(other.email, other.password, { cookie: cookieOf(second).split(';')[0] });
    expect(await status(second.body.token)).toBe(200);
  });

  test('keeps neither password nor token readable', async () => {
    const rows = await service.pool.query(
      "select (select string_agg(p::text, '') from people p) || (select string_agg(s::text, '') from sessions s) as t",
    );
    expect(rows.rows[0].t).toContain('$argon2id$');
    expect(rows.rows[0].t).not.toContain(member.token);
    expect(rows.rows[0].t).not.toContain(Buffer.from(member.token).toString('hex'));
    expect(rows.rows[0].t).not.toContain(member.password);
  });

  test('refuses a wrong password and an unknown address alike', async () => {
    const wrong = await signIn(member.email, 'not this one, surely');
    const unknown = await signIn('nobody@example.com', 'not this one, surely');
    expect([wrong.status, wrong.body]).toEqual([401, unknown.body]);
    expect(wrong.body.type).toBe('/problems/wrong-password');
    expect(wrong.headers.getSetCookie()).toEqual([]);
  });

  test.each([
    ['/email', { email: 'nobody', password: 'x' }],
    ['/email', { password: 'x' }],
    ['/password', { email: 'nobody@example.com' }],
    ['/password', { email: 'nobody@example.com', password: 7 }],
    ['/password', { email: 'nobody@example.com', password: 'x\u0000' }],
    ['/extra', { email: 'nobody@example.com', password: 'x', extra: 1 }],
  ])('names %s when it is at fault', async (pointer, body) => {
    const answer = await service.request('POST', '/session', { body });
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, pointer]);
  });
});

describe('a session', () => {
  test('is told by its token or its cookie', async () => {
    const answer = await signIn(member.email, member.password);
    const cookie = cookieOf(answer).split(';')[0] ?? '';
    const byCookie = await service.request('GET', '/session', { headers: { cookie } });
    const byToken = await service.as(answer.body.token, 'GET', '/session');
    for (const read of [byCookie, byToken])
      expect([read.status, read.body]).toEqual([200, { person: member.person }]);
  });

  test('ends when it is ended, and no other does', async () => {
    const other = (await signIn(member.email, member.password)).body.token;
    const ended = await service.as(member.token, 'DELETE', '/session');
    expect(ended.status).toBe(204);
    expect(cookieOf(ended)).toMatch(/^session=; /);
    expect((await service.as(member.token, 'GET', '/session')).status).toBe(401);
    expect((await service.as(other, 'GET', '/session')).status).toBe(200);
  });

  test('ends by itself', async () => {
    await service.pool.query('update sessions set expires_at = now() where person_id = $1', [
      member.person.id,
    ]);
    expect((await service.as(member.token, 'GET', '/coaches')).status).toBe(401);
  });

  test.each([
    ['none', {}],
    ['an empty one', { authorization: 'Bearer ' }],
    ['rubbish', { authorization: 'Bearer slp_abc' }],
    ['another scheme', { authorization: 'Basic bWFyYTpzZWNyZXQ=' }],
    ['a made-up one', { authorization: `Bearer slp_${'A'.repeat(64)}` }],
    ['a made-up cookie', { cookie: `session=slp_${'A'.repeat(64)}` }],
    ['a broken cookie', { cookie: 'session=%E0%A4%A' }],
  ])('is not begun by %s', async (_, headers) => {
    const answer = await service.request('GET', '/coaches', { headers });
    expect([answer.status, answer.body.type]).toEqual([401, '/problems/not-signed-in']);
  });
});

describe('a write by cookie', () => {
  const write = async (headers: Record<string, string>) => {
    const cookie = `session=${member.token}`;
    return service.request('POST', '/coaches', { body: { name: 'Fern' }, headers: { cookie, ...headers } });
  };

  test('is taken from our own pages and from programs', async () => {
    expect((await write({ origin: service.url })).status).toBe(201);
    expect((await write({})).status).toBe(201);
  });

  test.each([
    ['another site', { origin: 'https://elsewhere.example.com' }],
    ['another port', { origin: 'http://127.0.0.1:1' }],
    ['a page without an origin', { origin: 'null' }],
    ['a site that hides its origin', { 'sec-fetch-site': 'cross-site' }],
  ])('is refused from %s', async (_, headers) => {
    const refused = await write(headers);
    expect([refused.status, refused.body.type]).toEqual([403, '/problems/foreign-origin']);
    expect((await service.as(member.token, 'GET', '/coaches')).body.items).toEqual([]);
  });

  test('by token is taken from anywhere: other sites do not have it', async () => {
    const headers = { origin: 'https://elsewhere.example.com' };
    const body = { name: 'Fern' };
    expect((await service.request('POST', '/coaches', { token: member.token, headers, body })).status).toBe(
      201,
    );
  });
});

describe('ten wrong passwords', () => {
  test.each([
    ['of a person', () => member.email],
    ['of nobody', () => `${crypto.randomUUID()}@example.com`],
  ])('%s close the door for a quarter of an hour, the right one included', async (_, emailOf) => {
    const email = emailOf();
    for (let n = 0; n < 10; n++) expect((await signIn(email, `wrong number ${n}`)).status).toBe(401);
    const next = await signIn(email, member.password, { 'x-forwarded-for': '203.0.113.9' });
    expect([next.status, next.body.type]).toEqual([429, '/problems/too-many-attempts']);
    const wait = Number(next.headers.get('retry-after'));
    expect(wait).toBeGreaterThan(890);
    expect(wait).toBeLessThanOrEqual(900);
    expect((await signIn(FIRST_PERSON.email, FIRST_PERSON.password)).status).toBe(200);
  });

  test('are ten also when thirty are sent at once', async () => {
    const answers = await Promise.all(
      Array.from({ length: 30 }, () => signIn(member.email, 'wrong at once')),
    );
    const statuses = answers.map((answer) => answer.status).sort();
    expect(statuses).toEqual([...Array(10).fill(401), ...Array(20).fill(429)]);
  });

  test('count no longer once the quarter of an hour has passed', async () => {
    for (let n = 0; n < 10; n++) await signIn(member.email, `wrong number ${n}`);
    await service.pool.query("update sign_in_failures set failed_at = failed_at - interval '15 minutes'");
    expect((await signIn(member.email, member.password)).status).toBe(200);
  });

  test('are counted, not right ones', async () => {
    for (let n = 0; n < 9; n++) await signIn(member.email, `wrong number ${n}`);
    for (let n = 0; n < 3; n++) expect((await signIn(member.email, member.password)).status).toBe(200);
    expect((await signIn(member.email, 'wrong for the tenth time')).status).toBe(401);
    expect((await signIn(member.email, member.password)).status).toBe(429);
  });
});

/** The whole of an attack by `SIGN_IN_ATTEMPTS=10000 npx vitest run --project contract tests/contract/access/session.test.ts`. */
const ATTEMPTS = Number(process.env.SIGN_IN_ATTEMPTS ?? 800);

test(`${ATTEMPTS} attempts from everywhere are ten wrong passwords for each address, and tell nothing`, {
  timeout: 600_000,
}, async () => {
  const senders = 20;
  const unknown = `${crypto.randomUUID()}@example.com`;
  const told = [member.email, unknown].map((email) => ({ email, answers: new Map<string, number>() }));
  const each = ATTEMPTS / told.length / senders;
  const send = async (sender: number): Promise<void> => {
    for (let n = 0; n < each; n++)
      for (const { email, answers } of told) {
        // Each comes from another network: no limit of senders helps.
        const from = `2001:db8:${sender}:${n}::1`;
        const { status, body } = await signIn(email, `guess ${sender} ${n}`, { 'x-forwarded-for': from });
        const answer = `${status} ${body.type}`;
        answers.set(answer, (answers.get(answer) ?? 0) + 1);
      }
  };
  await Promise.all(Array.from({ length: senders }, (_, sender) => send(sender)));
  const expected = {
    '401 /problems/wrong-password': 10,
    '429 /problems/too-many-attempts': ATTEMPTS / told.length - 10,
  };
  expect(told.map(({ answers }) => Object.fromEntries(answers))).toEqual([expected, expected]);
  // Whoever is signed in stays so, and others come in as ever.
  expect((await service.as(member.token, 'GET', '/session')).status).toBe(200);
  expect((await signIn(FIRST_PERSON.email, FIRST_PERSON.password)).status).toBe(200);
});

describe('from one address', () => {
  const MOST = 12;
  let app: App;
  let url: string;
  beforeAll(async () => {
    app = await buildApp(service.app.database, { limits: { wrongSignInsPerMinute: MOST } });
    url = await app.listen({ port: 0, host: '127.0.0.1' });
  });
  afterAll(() => app?.close());
  const signInFrom = (address: string, email: string, password: string) =>
    sendRequest(url, 'POST', '/session', {
      body: { email, password },
      headers: { 'x-forwarded-for': address },
    });

  test('any number of right ones is taken in a minute: many share the address of an office', async () => {
    for (let n = 0; n <= MOST; n++)
      expect((await signInFrom('203.0.113.20', member.email, member.password)).status).toBe(200);
  });

  test('so many wrong ones are too many, those refused for their person left out; other addresses go on', async () => {
    const from = '203.0.113.21';
    // The first ten are wrong, all others are refused unheard.
    for (let n = 0; n < 2 * MOST; n++) await signInFrom(from, member.email, `wrong number ${n}`);
    for (let n = 10; n < MOST; n++)
      expect((await signInFrom(from, `nobody-${n}@example.com`, 'a guess')).status).toBe(401);
    const refused = await signInFrom(from, FIRST_PERSON.email, FIRST_PERSON.password);
    expect([refused.status, refused.body.type]).toEqual([429, '/problems/too-many-requests']);
    expect(Number(refused.headers.get('retry-after'))).toBeGreaterThan(0);
    expect((await signInFrom('203.0.113.22', FIRST_PERSON.email, FIRST_PERSON.password)).status).toBe(200);
  });
});

test('right sign-ins at once all succeed', async () => {
  const answers = await Promise.all(Array.from({ length: 25 }, () => signIn(member.email, member.password)));
  expect(new Set(answers.map((answer) => answer.status))).toEqual(new Set([200]));
});
