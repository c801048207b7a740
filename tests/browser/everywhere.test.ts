import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { PHONE, PHONE_SIZE } from './support/devices.ts';
import { addFleet, type Fleet, HOSTILE_NAME } from './support/fleet.ts';
import { describePages } from './support/place.ts';
import { openWeakLine } from './support/weakLine.ts';

const SIZES = [{ width: 320, height: 640 }, PHONE_SIZE, { width: 2560, height: 1440 }];

const SPANS = 'beforeFrom=2026-04-01&beforeTo=2026-04-12&afterFrom=2026-04-13&afterTo=2026-04-22';

/** How many pixels the page itself scrolls sideways, once it is laid out anew and its pictures have followed. */
const sideways = (page: Page) =>
  page.evaluate<number>(`new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() =>
    done(document.documentElement.scrollWidth - document.documentElement.clientWidth))))`);

describePages('every page', (place) => {
  let fleet: Fleet;
  beforeAll(async () => {
    fleet = await addFleet(await place.api());
  });

  test('fits the screen without scrolling sideways, from the smallest phone to a wall', async () => {
    const { page, troubles } = await place.visitAs(place.person, '/', { viewport: SIZES[0] });
    const paths = [
      '/',
      `/coaches/${fleet.coach.id}`,
      `/coaches/${fleet.hostileCoach.id}`,
      '/new-coach',
      '/settings',
      '/people',
      '/record',
      '/sign-ins',
      '/kept',
      `/rooms/${fleet.worsening.id}/upload`,
      `/rooms/${fleet.hostile.id}/upload`,
      `/rooms/${fleet.worsening.id}`,
      `/rooms/${fleet.hostile.id}`,
      `/rooms/${fleet.hostile.id}/compare`,
      `/rooms/${fleet.worsening.id}/compare?${SPANS}`,
      `/strokes/${fleet.strokeIds[fleet.strokeIds.length - 1]}`,
    ];
    for (const path of paths) {
      await page.goto(path, { waitUntil: 'networkidle' });
      await page.getByRole('heading', { level: 1 }).waitFor();
      for (const size of SIZES) {
        await page.setViewportSize(size);
        expect(await sideways(page), `${path}, ${size.width} wide`).toBe(0);
      }
    }
    expect(troubles).toEqual([]);
  });

  test('on a phone the answer of a room is on the first screen', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${fleet.worsening.id}`, PHONE);
    const answer = page.getByRole('region', { name: /^(Watch|Needs work|Stop)$/ });
    await answer.waitFor();
    const box = await answer.boundingBox();
    expect(box).not.toBeNull();
    expect(box!.y + box!.height).toBeLessThan(PHONE_SIZE.height);
  });

  test('a name made to do harm is shown as what it is: text', async () => {
    const { page, troubles } = await place.visitAs(place.person, '/');
    await page
      .getByRole('link')
      .filter({ hasText: HOSTILE_NAME.slice(0, 20) })
      .last()
      .click();
    const heading = page.getByRole('heading', { level: 1 });
    await heading.getByText(HOSTILE_NAME.slice(0, 20)).waitFor();
    expect(await heading.textContent()).toBe(HOSTILE_NAME);
    expect(await page.locator('main img').count()).toBe(0);
    expect(await page.title()).toContain(HOSTILE_NAME.slice(0, 20));
    expect(troubles).toEqual([]);
  });

  test('has one first heading, landmarks, and a way past the navigation', async () => {
    const { page } = await place.visitAs(place.person, `/rooms/${fleet.worsening.id}`);
    await page.getByRole('heading', { level: 1, name: 'Bedroom' }).waitFor();
    expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1);
    expect(await page.getByRole('main').count()).toBe(1);
    expect(await page.getByRole('banner').count()).toBe(1);
    expect(await page.getByRole('contentinfo').count()).toBe(1);
    await page.reload();
    await page.getByRole('heading', { level: 1, name: 'Bedroom' }).waitFor();
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Skip to the content');
  });

  test('without the service it says so and tries again on demand', async () => {
    const { page } = await place.visitAs(place.person, '/');
    await page.route('**/api/v1/rooms/**', (route) => route.abort());
    await page.goto(`/rooms/${fleet.worsening.id}`);
    await page.getByText('The service cannot be reached.').first().waitFor();
    await page.unroute('**/api/v1/rooms/**');
    await page.getByRole('button', { name: 'Try again' }).first().click();
    await page.getByRole('heading', { level: 1, name: 'Bedroom' }).waitFor();
  });

  test('shows itself once a service that was just starting can answer', async () => {
    const { page } = await place.visitAs(place.person, '/', { turnsClock: true });
    await page.clock.install();
    await page.routeWebSocket('**/api/v1/live', (socket) => socket.close());
    await page.route('**/trend?**', (route) => route.fulfill({ status: 503, body: '' }));
    await page.goto(`/rooms/${fleet.worsening.id}`);
    await page.getByText('The service could not answer. Try again in a minute.').first().waitFor();
    expect(await page.getByText('Nothing was changed').count()).toBe(0);
    await page.unroute('**/trend?**');
    await page.clock.fastForward(4_000);
    await page.getByRole('figure', { name: 'Side: front' }).waitFor();
  });

  test('that cannot be drawn says so and holds up no other', async () => {
    const { page, troubles } = await place.visitAs(place.person, '/settings');
    await page.route('**/api/v1/overview?coaches=**', (route) =>
      route.fulfill({ json: { items: [{ id: fleet.coach.id, name: 'Half a coach' }], next: null } }),
    );
    await page.route(`**/coaches/${fleet.coach.id}`, async (route) =>
      route.fulfill({ response: await route.fetch({ url: '/index.html' }) }),
    );
    await page.goto(`/coaches/${fleet.coach.id}`);
    await page.getByText('Something went wrong on this page.').waitFor();
    expect(troubles.join()).toMatch(/undefined/);
    await page.getByRole('link', { name: 'Coaches' }).click();
    await page.getByRole('heading', { level: 1, name: 'Coaches' }).waitFor();
    expect(await page.getByText('Something went wrong on this page.').count()).toBe(0);
  });

  test('draws its pictures once there is a network, where it came without', async () => {
    const { page } = await place.visitAs(place.person, '/', { turnsClock: true, serviceWorkers: 'block' });
    await page.clock.install();
    await page.route('**/assets/plotLibrary*.js', (route) => route.abort());
    await page.goto(`/rooms/${fleet.worsening.id}`);
    const front = page.getByRole('figure', { name: 'Side: front' });
    await front.getByText('The service cannot be reached.').waitFor();
    await page.unroute('**/assets/plotLibrary*.js');
    await page.clock.fastForward(4_000);
    await front.locator('canvas').waitFor();
  });

  test('gives up a line that stalls, says so and tries again', async () => {
    const { page } = await place.visitAs(place.person, '/', { turnsClock: true });
    await page.clock.install();
    const courses = /\/trend\?.*&points=/;
    const asked = new Set<string>();
    await page.route(courses, (route) => void asked.add(route.request().url()));
    await page.goto(`/rooms/${fleet.worsening.id}`);
    await page.getByRole('region', { name: 'Over time' }).getByText('Loading…').first().waitFor();
    // One for each side.
    await expect.poll(() => asked.size).toBe(2);
    await page.clock.fastForward(61_000);
    await page.getByText('The service cannot be reached.').first().waitFor();
    await page.unroute(courses);
    await page.clock.fastForward(4_000);
    await page.getByRole('figure', { name: 'Side: front' }).waitFor();
  });

  test('asks again by itself where the service has too much to do, and blames nobody for it', async () => {
    const { page } = await place.visitAs(place.person, '/', { turnsClock: true });
    await page.clock.install();
    const comparison = /\/rooms\/[^/]+\/comparison/;
    await page.route(comparison, (route) =>
      route.fulfill({
        status: 429,
        headers: { 'retry-after': '10' },
        contentType: 'application/problem+json',
        body: '{}',
      }),
    );
    await page.goto(`/rooms/${fleet.worsening.id}/compare?${SPANS}`);
    await page.getByText('The service is busy.').first().waitFor();
    expect(await page.getByText('Too many attempts').count()).toBe(0);
    await page.unroute(comparison);
    await page.clock.fastForward(4_000);
    await page.getByRole('heading', { name: 'What was found' }).waitFor();
  });

  test.each([
    ['/coaches/none', 'This coach was not found'],
    ['/rooms/none', 'This room was not found'],
    ['/rooms/none/compare', 'This room was not found'],
    ['/rooms/none/upload', 'This room was not found'],
    ['/strokes/none', 'This stroke was not found'],
  ])('says at %s, which cannot be an address, that there is no such thing', async (path, title) => {
    const { page } = await place.visitAs(place.person, path);
    await page.getByRole('heading', { level: 1, name: title }).waitFor();
    await page.getByText('There is nothing here that you may see.').waitFor();
    expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(0);
    await page.getByRole('link', { name: 'To the coaches' }).click();
    await page.getByRole('heading', { level: 1, name: 'Coaches' }).waitFor();
  });

  test('takes a line that breaks in the middle of an answer for what it is, and goes on by itself', async () => {
    const line = await openWeakLine(place.service().url);
    try {
      const { page } = await place.visitAs(place.person, '/', { turnsClock: true });
      await page.clock.install();
      line.breakAt(/^\/api\/v1\/rooms\/[^/]+\/trend/);
      await page.goto(`${line.url}/rooms/${fleet.worsening.id}`);
      await page.getByText('The service cannot be reached.').first().waitFor();
      expect(await page.getByText('Something went wrong on this page.').count()).toBe(0);
      line.breakAt(null);
      await page.clock.fastForward(4_000);
      await page.getByRole('figure', { name: 'Side: front' }).waitFor();
    } finally {
      await line.close();
    }
  });
});
