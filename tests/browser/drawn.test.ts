import type { BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { type Api, ask } from './support/api.ts';
import { NARROW } from './support/devices.ts';
import { addCoach, addRoom, allAnalysed, sendDays } from './support/fleet.ts';
import { addOwner, keptOnDevice } from './support/owner.ts';
import { describePages } from './support/place.ts';
import type { SideShape } from './support/strokeShape.ts';
import { type Person, signIn, standsStill } from './support/visitor.ts';

const FAR_AWAY = { locale: 'en-US', timezoneId: 'America/Denver' };
const WORSENING: (day: number) => SideShape[] = (day) => [
  { side: 'front', runningAmps: day < 10 ? 8.5 : 12.5 },
  { side: 'rear', runningAmps: 8.2 },
];

/** What tells the answer. */
const PARTS = 'h1, .answer, .answer *, .course > p, .warning > h3, .warning-kind';
const textOf = (page: Page) => page.locator(PARTS).allInnerTexts();

/** That every style sheet of the page has arrived: without it a line break may be missing from its text. */
const IS_STYLED = `document.body?.childElementCount > 0 &&
  [...document.querySelectorAll('link[rel=stylesheet]')].every((each) => each.sheet)`;

/** Opens a page whose own code is held back until the page has been read as the service drew it. */
async function readBeforeScripts<Read>(page: Page, path: string, read: () => Promise<Read>): Promise<Read> {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route(/\/assets\/start-/, async (route) => {
    await held;
    await route.continue();
  });
  await page.goto(path, { waitUntil: 'commit' });
  await expect.poll(() => page.evaluate(IS_STYLED)).toBe(true);
  const found = await read();
  release();
  await page.locator('#answers').waitFor({ state: 'detached' });
  return found;
}

describePages('a page that the service has drawn', (place) => {
  let api: Api;
  let owner: Person;
  let coach: { id: string };
  let room: { id: string };
  beforeAll(async () => {
    api = await place.api();
    coach = await addCoach(api, 'Juniper 31');
    room = await addRoom(api, coach, 'Bedroom');
    await sendDays(api, coach, room, WORSENING, 16);
    await allAnalysed(api, room);
    owner = await addOwner(place);
  });

  /** A browser that has a session and nothing else of ours. */
  async function newcomer(options: BrowserContextOptions = {}, person = owner): Promise<Page> {
    const { page } = await place.visit('/healthz', { ...NARROW, ...options, onNewDevice: true });
    const { email, password } = person;
    const answer = await page.request.post('/api/v1/session', { data: { email, password } });
    expect(answer.status()).toBe(200);
    return page;
  }

  test.each([
    ['the first page', () => '/'],
    ['a coach', () => `/coaches/${coach.id}`],
    ['a room', () => `/rooms/${room.id}`],
  ])('%s can be read before any script has run', async (_, path) => {
    const page = await newcomer({ javaScriptEnabled: false });
    await page.goto(path());
    const answer = page.locator('.answer');
    await answer.getByText(/above this room's own normal/).waitFor();
    await answer.getByText(/32 strokes, last .* ago/).waitFor();
    expect((await answer.boundingBox())!.y).toBeLessThan(NARROW.viewport.height / 2);
  });

  test('a lot can be read before any script has run', async () => {
    const page = await newcomer({ javaScriptEnabled: false }, place.person);
    await page.goto('/');
    const rows = page.getByRole('list', { name: 'List of coaches' }).locator('> li');
    await rows
      .filter({ hasText: 'Juniper 31' })
      .getByRole('link', { name: /^Bedroom/ })
      .waitFor();
    await page
      .getByText(/^1 coach/)
      .first()
      .waitFor();
  });

  test.each([
    ['on a phone', NARROW],
    ['on a desk', { viewport: { width: 1440, height: 900 } }],
  ])('a lot %s is taken over as it stands, and nothing of it moves', async (_, options) => {
    // One coach alone is no lot. It goes again: the owner's first page is that of one coach.
    const second = await addCoach(api, 'Juniper 32');
    const page = await newcomer(options, place.person);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(`${request.method()} ${new URL(request.url()).pathname}`));
    await page.addInitScript(`window.moved = 0;
      new PerformanceObserver((list) => { for (const each of list.getEntries()) window.moved += each.value; })
        .observe({ type: 'layout-shift', buffered: true });`);
    const looked = page.waitForResponse('**/overview/look');
    await readBeforeScripts(page, '/', async () => {
      await page.locator('.coach').first().waitFor();
      await page.evaluate(
        `window.drawn = [...document.querySelectorAll('.coach, .room-line, .lead, .find')]`,
      );
    });
    await looked;
    await page.waitForLoadState('networkidle');
    expect(await page.evaluate('drawn.length > 3 && drawn.every((each) => each.isConnected)')).toBe(true);
    expect(await page.evaluate('moved')).toBeLessThan(0.02);
    expect(asked.filter((each) => each.includes('/overview'))).toEqual(['POST /api/v1/overview/look']);
    await place.service().request('DELETE', `/coaches/${second.id}`, { token: api.token });
  });

  test.each([
    ['the first page', () => '/', {}, ''],
    ['a coach, in another language', () => `/coaches/${coach.id}`, { locale: 'de-DE' }, ''],
    ['a room', () => `/rooms/${room.id}`, {}, '12 Apr 2026, 17:00'],
    ['a room, far away', () => `/rooms/${room.id}`, FAR_AWAY, 'Apr 12, 2026, 9:00 AM'],
  ])('%s is taken over as it stands', async (_, path, options, since) => {
    const page = await newcomer(options);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(new URL(request.url()).pathname));
    const times = page.locator('.warning time');
    const drawn = await readBeforeScripts(page, path(), async () => {
      await page.locator('.answer').waitFor();
      await page.evaluate(`window.drawn = [...document.querySelectorAll('${PARTS}')]`);
      // Whoever draws it does not know the reader's zone.
      expect((await times.allInnerTexts()).every((text) => text === '')).toBe(true);
      return textOf(page);
    });
    await standsStill(page);
    await page.waitForLoadState('networkidle');
    expect(await page.evaluate('drawn.length > 8 && drawn.every((each) => each.isConnected)')).toBe(true);
    expect((await textOf(page)).slice(0, drawn.length)).toEqual(drawn);
    expect(await page.locator('.answer time').getAttribute('title')).toMatch(/2026/);
    for (const text of await times.allInnerTexts()) expect(text.replaceAll(/\s/g, ' ')).toBe(since);
    // What came along is not asked for again.
    expect(
      asked.filter((each) => /^\/api\/v1\/(session|settings|overview|rooms\/[^/]+(\/status)?)$/.test(each)),
    ).toEqual([]);
  });

  test.each([
    ['the first page', () => '/'],
    ['a room', () => `/rooms/${room.id}`],
  ])('%s takes at most 90 kB on a first visit, its answers included', async (_, path) => {
    const page = await newcomer();
    await page.goto(path(), { waitUntil: 'networkidle' });
    await standsStill(page);
    const fetched = await page.evaluate<[string, number][]>(
      `performance.getEntries().flatMap((each) => each.transferSize > 0 ? [[each.name, each.transferSize]] : [])`,
    );
    expect(fetched.length).toBeGreaterThan(5);
    expect(
      fetched.reduce((sum, [, bytes]) => sum + bytes, 0),
      String(fetched),
    ).toBeLessThanOrEqual(90 * 1024);
  });

  test('is kept on the device for when there is no network, though nothing of it was asked for', async () => {
    const page = await newcomer();
    await page.goto('/');
    await keptOnDevice(page);
    await page.waitForFunction(`caches.keys().then(async (all) => {
      const name = all.find((n) => n.startsWith('answers-'));
      return name !== undefined && (await (await caches.open(name)).keys()).some((k) => k.url.includes('/overview'));
    })`);
    await page.context().setOffline(true);
    await page.reload();
    await page.locator('.answer').filter({ hasText: 'Bedroom' }).waitFor();
    await page.getByText(/^No network now\. What you see is from .*;/).waitFor();
  });

  test('comes from the service again on the next visit, and its files from the device', async () => {
    const page = await newcomer();
    await page.goto('/');
    await keptOnDevice(page);
    const kept = await page.evaluate<string>(`caches.keys().then(async (names) => {
      const shell = await caches.open(names.find((name) => name.startsWith('shell-')));
      const pages = (await shell.keys()).filter((each) => !each.url.includes('/assets/'));
      return (await Promise.all(pages.map(async (each) => (await shell.match(each)).text()))).join('');
    })`);
    expect(kept).toContain('<div id="app"></div>');
    expect(kept).not.toContain('Juniper');
    await page.reload();
    await page.locator('.answer').filter({ hasText: 'Bedroom' }).waitFor();
    expect(await page.evaluate(`navigator.serviceWorker.controller !== null`)).toBe(true);
    expect(
      await page.evaluate(`performance.getEntriesByType('resource')
        .filter((each) => each.name.includes('/assets/')).every((each) => each.transferSize === 0)`),
    ).toBe(true);
  });

  test('leaves nothing behind for whoever goes back after signing out', async () => {
    const page = await newcomer();
    await page.goto('/');
    await page.locator('.answer').waitFor();
    await page.goto(`/rooms/${room.id}`);
    await page.locator('.answer').waitFor();
    await standsStill(page);
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByLabel('E-mail').waitFor();
    expect(await page.content()).not.toContain('Bedroom');
    await page.goBack();
    await page.getByLabel('E-mail').waitFor();
    expect(await page.content()).not.toContain('Bedroom');
    await page.goBack();
    await page.getByLabel('E-mail').waitFor();
    expect(await page.content()).not.toContain('Juniper');
  });

  test('is the next person’s own when somebody else signs in', async () => {
    const page = await newcomer();
    await page.goto('/');
    await page.locator('.answer').waitFor();
    const other = await place.service().newAccount();
    await page.request.post('/api/v1/session', { data: { email: other.email, password: other.password } });
    await page.goto(`/rooms/${room.id}`);
    await page
      .getByText('There is nothing here')
      .or(page.getByRole('heading', { level: 1 }))
      .first()
      .waitFor();
    expect(await page.content()).not.toContain('Bedroom');
    await page.waitForFunction(
      `caches.keys().then((all) => all.filter((n) => n.startsWith('answers-')).length < 2)`,
    );
    expect(await ask<{ items: unknown[] }>({ ...api, token: other.token }, 'GET', '/coaches')).toMatchObject({
      items: [],
    });
  });

  test('greets by its form whoever is not signed in', async () => {
    const { page, troubles } = await place.visit(`/rooms/${room.id}`, NARROW);
    await signIn(page, owner);
    await page.locator('.answer').waitFor();
    expect(troubles).toEqual([]);
  });
});
