import { beforeAll, expect, test } from 'vitest';
import { type Api, ask } from './support/api.ts';
import { PHONE } from './support/devices.ts';
import { addCoach, addRoom, allAnalysed, sendDays } from './support/fleet.ts';
import { addOwner, keptOnDevice } from './support/owner.ts';
import { describePages } from './support/place.ts';
import { type SideShape, strokeBody } from './support/strokeShape.ts';
import { type Person, signIn, standsStill } from './support/visitor.ts';

/** What pages keep is what is looked at here: a device has nothing of before, not in its memory either. */
const NEW_PHONE = { ...PHONE, onNewDevice: true };
const EVEN: SideShape[] = [
  { side: 'front', runningAmps: 8.5 },
  { side: 'rear', runningAmps: 8.2 },
];

describePages('the owner of one coach, on a phone', (place) => {
  let api: Api;
  let owner: Person;
  let room: { id: string };
  let logger: Api;
  beforeAll(async () => {
    api = await place.api();
    const coach = await addCoach(api, 'Juniper 31');
    room = await addRoom(api, coach, 'Bedroom');
    await addRoom(api, coach, 'Dinette');
    await sendDays(api, coach, room, () => EVEN, 12);
    await allAnalysed(api, room);
    const { token } = await ask<{ token: string }>(api, 'POST', `/coaches/${coach.id}/loggers`, {
      name: 'Step board',
      sensor: 'clamp',
    });
    logger = { url: api.url, token };
    owner = await addOwner(place);
  });

  test('lands on its rooms, each with its answer on the first screen', async () => {
    const { page, troubles } = await place.visit('/', NEW_PHONE);
    await signIn(page, owner);
    await page.getByRole('heading', { level: 1, name: 'Juniper 31' }).waitFor();
    const answer = page.locator('.answer').filter({ hasText: 'Bedroom' });
    await answer.getByText('Clear').waitFor();
    await answer.getByText(/No trouble found\. .* than its normal|its normal current/).waitFor();
    await answer.getByText('Nothing to do for now').waitFor();
    await answer.getByText(/24 strokes, last .* ago/).waitFor();
    for (const each of await page.locator('.answer').all()) {
      const box = await each.boundingBox();
      expect(box!.y + box!.height).toBeLessThan(NEW_PHONE.viewport.height);
    }
    await page.getByRole('img', { name: /^Picture of the last strokes/ }).waitFor();
    await page
      .getByText(
        /The front side drew (its normal current|\d+% (more|less) than its normal) the last time it went out/,
      )
      .waitFor();
    await page.getByText('Your dealer can let a technician see this coach').waitFor();
    expect(await page.getByText('Delete this coach').count()).toBe(0);
    expect(troubles).toEqual([]);
  });

  test('a dealer of one coach finds it without what is for hundreds', async () => {
    const { page } = await place.visitAs(place.person, '/', PHONE);
    await page.getByRole('heading', { level: 2, name: 'Juniper 31' }).waitFor();
    expect(await page.getByLabel('Search coach, model or room').count()).toBe(0);
    expect(await page.getByRole('checkbox').count()).toBe(0);
    await page.getByRole('link', { name: 'Add a coach' }).waitFor();
  });

  test('sees a new stroke by itself', async () => {
    const { page } = await place.visit('/', NEW_PHONE);
    const watched = page.waitForEvent('websocket').then((socket) => socket.waitForEvent('framereceived'));
    await signIn(page, owner);
    await watched;
    const answer = page.locator('.answer').filter({ hasText: 'Bedroom' });
    await answer.getByText(/24 strokes/).waitFor();
    const at = new Date('2026-06-01T15:00:00Z');
    await ask(logger, 'POST', '/strokes', strokeBody(room.id, 'the newest', at, 'extend', EVEN));
    await answer.getByText(/25 strokes/).waitFor();
  });

  test('is shown the last answers with their age while there is no network, and the latest after', async () => {
    const { page, troubles } = await place.visit('/', NEW_PHONE);
    await signIn(page, owner);
    await page.locator('.answer').first().waitFor();
    await page.getByText(/The front side drew .*its normal .*the last time/).waitFor();
    await keptOnDevice(page);
    await page.context().setOffline(true);
    await page.reload();
    await page.getByRole('heading', { level: 1, name: 'Juniper 31' }).waitFor();
    await page.locator('.answer').filter({ hasText: 'Bedroom' }).getByText('Clear').waitFor();
    await page.getByText(/The front side drew .*its normal .*the last time/).waitFor();
    await page.getByText(/^No network now\. What you see is from .*;/).waitFor();
    await page.context().setOffline(false);
    await page.getByText(/No network now/).waitFor({ state: 'detached' });
    expect(troubles.filter((trouble) => !/ERR_INTERNET_DISCONNECTED|WebSocket/.test(trouble))).toEqual([]);
  });

  test('is shown no answer that pages of another shape kept on the device, nor keeps one', async () => {
    const { page } = await place.visitAs(owner, '/', NEW_PHONE);
    await page.locator('.answer').first().waitFor();
    await keptOnDevice(page);
    const stores = () =>
      page.evaluate<string[]>('caches.keys().then((all) => all.filter((n) => n.startsWith("answers-")))');
    await expect.poll(async () => (await stores()).length).toBe(1);
    const [kept] = await stores();
    const [, shape, person] = /^answers-(\d+)-(.+)$/.exec(kept)!;
    // What pages of before put there, in a shape of then, that these would stumble over.
    const old = [`answers-${person}`, `answers-${Number(shape) - 1}-${person}`];
    await page.evaluate(`Promise.all(${JSON.stringify(old)}.map(async (name) => {
      const now = await caches.open(${JSON.stringify(kept)});
      const then = await caches.open(name);
      for (const key of await now.keys())
        await then.put(key, new Response('{"items":[]}', { headers: { 'x-kept-at': String(Date.now()) } }));
    }))`);
    await page.context().setOffline(true);
    await page.reload();
    await page.locator('.answer').filter({ hasText: 'Bedroom' }).getByText('Clear').waitFor();
    await page.context().setOffline(false);
    await page.reload();
    await page.locator('.answer').first().waitFor();
    await expect.poll(stores).toEqual([kept]);
  });

  test('sees how old the page is grow while it stays open without a network', async () => {
    const { page } = await place.visitAs(owner, '/', { ...NEW_PHONE, turnsClock: true });
    await page.clock.install();
    await page.goto('/');
    const answer = page.locator('.answer').filter({ hasText: 'Bedroom' });
    await answer.getByText(/strokes, last .* ago/).waitFor();
    await standsStill(page);
    await page.context().setOffline(true);
    await page.clock.fastForward('01:01');
    await page.getByText(/^No network now\. What you see is from 1 minute ago;/).waitFor();
    await page.clock.fastForward('31:00');
    await page.getByText(/^No network now\. What you see is from 32 minutes ago;/).waitFor();
  });

  test('takes along what was kept on the device when signing out', async () => {
    const { page } = await place.visit('/', NEW_PHONE);
    await signIn(page, owner);
    await page.locator('.answer').first().waitFor();
    const kept = () =>
      page.evaluate<string[]>('caches.keys().then((all) => all.filter((n) => n.startsWith("answers-")))');
    await page.waitForFunction('caches.keys().then((all) => all.some((n) => n.startsWith("answers-")))');
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByLabel('E-mail').waitFor();
    // What was just being put there goes as soon as it is.
    await expect.poll(kept).toEqual([]);
    expect(await page.evaluate('localStorage.length')).toBe(0);
    await page.context().setOffline(true);
    await page.goto('/').catch(() => {});
    expect(await page.getByText('Bedroom').count()).toBe(0);
  });

  test('reads what the device has while a slow network takes its time', async () => {
    const { page } = await place.visit('/', NEW_PHONE);
    await signIn(page, owner);
    await page.locator('.answer').first().waitFor();
    await page.waitForFunction(
      `caches.keys().then(async (all) => {
        const name = all.find((n) => n.startsWith('answers-'));
        return name !== undefined && (await (await caches.open(name)).keys()).some((k) => k.url.includes('/overview'));
      })`,
    );
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route('**/api/v1/overview**', async (route) => {
      await held;
      await route.continue();
    });
    // The page as the device keeps it, where the service takes too long to draw one.
    await page.route('/', async (route) =>
      route.fulfill({ response: await route.fetch({ url: '/index.html' }) }),
    );
    await page.reload();
    await page.locator('.answer').filter({ hasText: 'Bedroom' }).waitFor();
    await page.getByText(/^What you see is from .*\. Asking for the latest/).waitFor();
    release();
    await page.getByText(/Asking for the latest/).waitFor({ state: 'detached' });
  });
});
