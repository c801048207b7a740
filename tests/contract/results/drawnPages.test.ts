import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildApp } from '../../../server/app.ts';
import { BUILT_PAGES } from '../../../server/drawing/sendPage.ts';
import { newSessionOf } from '../../support/newSessionOf.ts';
import { openPage } from '../../support/openPage.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import {
  CALLERS,
  type CallerName,
  newPeople,
  newThings,
  type People,
  type Things,
  tokenFor,
} from '../access/accessWorld.ts';

const service = serviceOfTests({ worker: false });
let people: People;
let things: Things;
let empty: string;

beforeAll(async () => {
  people = await newPeople(service);
  things = await newThings(service, people);
  empty = (await service.request('GET', '/')).text;
});

const SEE: readonly CallerName[] = ['dealer', 'technician', 'owner', 'grantedTechnician', 'grantedOwner'];
const SIGNED_IN: readonly CallerName[] = [...SEE, 'endedTechnician', 'otherDealer'];
const sessionOf = (caller: CallerName) => tokenFor(service, people, things, caller);

describe.each([
  ['the first page', () => '/'],
  ['a coach', () => `/coaches/${things.coach}`],
  ['a room', () => `/rooms/${things.room}`],
])('%s', (_, path) => {
  test.each(CALLERS)('shows %s what the API answers it, and nothing else', async (caller) => {
    const session = await sessionOf(caller);
    const page = await openPage(service.url, path(), { session });
    expect([page.status, page.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8']);
    expect(page.html.includes(things.name)).toBe(SEE.includes(caller));
    if (!SIGNED_IN.includes(caller)) {
      expect(page.html).toBe(empty);
      return;
    }
    expect(page.headers['cache-control']).toBe('private, no-store');
    expect(page.html).toContain('Sign out');
    for (const [question, answer] of page.answers) {
      const asked = await service.request('GET', question, { headers: { cookie: `session=${session}` } });
      expect([question, answer]).toEqual([question, asked.body]);
    }
    expect([...page.answers.keys()]).toContain('/session');
  });

  test('is empty once the session has ended', async () => {
    const session = await sessionOf('dealer');
    expect((await openPage(service.url, path(), { session })).html).toContain(things.name);
    await service.request('DELETE', '/session', { token: session });
    expect((await openPage(service.url, path(), { session })).html).toBe(empty);
  });
});

test('a grant that ended shows nothing any more', async () => {
  const visitor = await service.newAccount();
  const email = visitor.email;
  const body = { email, role: 'owner' };
  const token = people.dealer.token;
  const granted = await service.request('POST', `/coaches/${things.coach}/grants`, { token, body });
  expect((await openPage(service.url, '/', { session: visitor.token })).html).toContain(things.name);
  await service.request('DELETE', `/grants/${granted.body.grant?.id ?? granted.body.id}`, { token });
  for (const path of ['/', `/coaches/${things.coach}`, `/rooms/${things.room}`])
    expect((await openPage(service.url, path, { session: visitor.token })).html).not.toContain(things.name);
});

describe('nobody is told anything', () => {
  test('by a token in place of the cookie, nor by a token for scripts as a cookie', async () => {
    const authorization = `Bearer ${people.dealer.token}`;
    expect((await openPage(service.url, '/', { authorization })).html).toBe(empty);
    const made = await service.request('POST', '/tokens', {
      token: people.dealer.token,
      body: { name: 'x' },
    });
    expect((await openPage(service.url, '/', { session: made.body.token ?? 'slk_' })).html).toBe(empty);
  });

  test('that fetches the page to keep it, or asks for its head', async () => {
    const session = await sessionOf('dealer');
    const kept = await openPage(service.url, '/', { session, 'sec-fetch-mode': 'cors' });
    expect([kept.html, kept.headers['cache-control']]).toEqual([empty, 'no-cache']);
    const head = await service.app.inject({
      method: 'HEAD',
      url: '/',
      headers: { cookie: `session=${session}` },
    });
    expect([head.statusCode, head.body]).toEqual([200, '']);
    expect((await openPage(service.url, '/index.html', { session })).html).toBe(empty);
  });
});

test.each(['/settings', '/people', '/set-up', '/strokes/any'])('%s comes empty', async (path) => {
  const page = await openPage(service.url, path, { session: people.dealer.token });
  expect([page.status, page.html, page.headers['cache-control']]).toEqual([200, empty, 'no-cache']);
});

test.each(['/rooms/..', '/rooms/%2e%2e', '/coaches/a?b=%ff', '/coaches/,,', '/?', '/?q=<x>'])(
  '%s is a page whatever stands in it',
  async (path) => {
    const page = await openPage(service.url, path, {
      session: people.dealer.token,
      'accept-language': `${'x'.repeat(4000)};q=0.1,<script>`,
    });
    expect([page.status, page.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8']);
    expect(page.html).not.toContain('<x>');
  },
);

test('a name made to do harm stands in the page as text, and comes along whole', async () => {
  const dealer = await service.newAccount();
  const name = `</data></script><script>alert(1)</script>$& $' "'><img src=x onerror=alert(1)> &quot; \u2028 .`;
  const made = await service.request('POST', '/coaches', { token: dealer.token, body: { name } });
  const path = `/coaches/${made.body.id}`;
  const page = await openPage(service.url, path, { session: dealer.token });
  expect(page.html).not.toMatch(/<img|<script>|alert\(1\)<\/script>/);
  expect(page.html.match(/<script/g)).toHaveLength(empty.match(/<script/g)?.length ?? 0);
  expect(page.html).toContain('&lt;img src=x');
  expect(page.answers.get(`/overview?coaches=${made.body.id}`)).toMatchObject({ items: [{ name }] });
});

test('its dates are written as the person set, else as the browser asks, and its words are English', async () => {
  const session = await sessionOf('owner');
  // Without a zone no date is drawn.
  await service.request('PATCH', '/settings', { token: session, body: { timeZone: 'Europe/Berlin' } });
  const headers = { session, 'accept-language': 'de-DE,de;q=0.9' };
  const drawn = async () => (await openPage(service.url, `/rooms/${things.room}`, headers)).html;
  const asTheBrowser = await drawn();
  expect(asTheBrowser).toMatch(/<time[^>]*>\d\d\.\d\d\.\d{4}, /);
  expect(asTheBrowser).toMatch(/<time[^>]*>[^<]* ago</);
  await service.request('PATCH', '/settings', { token: session, body: { locale: 'en-GB' } });
  expect(await drawn()).toMatch(/<time[^>]*>\d+ [A-Z][a-z]+ \d{4}, /);
});

test('visitors at the same moment get each their own', async () => {
  const callers = Array.from({ length: 40 }, (_, i) => SIGNED_IN[i % SIGNED_IN.length]);
  const sessions = await Promise.all(
    callers.map((caller) => newSessionOf(service, people[caller as keyof People].person)),
  );
  const pages = await Promise.all(sessions.map((session) => openPage(service.url, '/', { session })));
  for (const [i, page] of pages.entries()) {
    const { person } = people[callers[i] as keyof People];
    expect(page.answers.get('/session')).toEqual({ person });
    expect(page.html).toContain(`title="${person.email}"`);
    expect(page.html.includes(things.name)).toBe(SEE.includes(callers[i]));
  }
});

test('while the database stands still, the page comes empty', async () => {
  const app = await buildApp({ pool: service.pool, db: service.db }, { pagesDrawnWithinMs: 50 });
  const client = new pg.Client(service.databaseUrl);
  await client.connect();
  await client.query('begin; lock table people in access exclusive mode');
  const page = await app.inject({ url: '/', headers: { cookie: `session=${people.dealer.token}` } });
  await client.end();
  expect([page.statusCode, page.body]).toEqual([200, empty]);
  await app.close();
});

test('a page that cannot be drawn comes empty, and the log says why', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'slideload-drawn-'));
  await cp(BUILT_PAGES, join(folder, 'dist'), { recursive: true });
  await mkdir(join(folder, 'dist-drawer'));
  await writeFile(
    join(folder, 'dist-drawer', 'draw.js'),
    `exports.drawer = { firstQuestions: () => ['/session'], draw: () => { throw new Error('no ink'); } };`,
  );
  const lines: string[] = [];
  const logger = { stream: { write: (line: string) => void lines.push(line) } };
  const app = await buildApp(
    { pool: service.pool, db: service.db },
    { pagesFolder: join(folder, 'dist'), logger },
  );
  const session = people.dealer.token;
  const page = await app.inject({ url: '/', headers: { cookie: `session=${session}` } });
  expect([page.statusCode, page.body]).toEqual([200, empty]);
  expect(lines.filter((line) => line.includes('no ink'))).toHaveLength(1);
  expect(lines.join('')).not.toContain(session);
  await app.close();
  await rm(folder, { recursive: true });
});
