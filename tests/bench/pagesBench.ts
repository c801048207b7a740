import type { Browser, Page } from 'playwright-core';
import { type Api, apiOf, ask } from '../browser/support/api.ts';
import { launchChromium } from '../browser/support/chromium.ts';
import { PHONE_SIZE } from '../browser/support/devices.ts';
import { addCoach, addRoom, sendDays } from '../browser/support/fleet.ts';
import { signIn } from '../browser/support/visitor.ts';
import { withPostgres } from './benchPostgres.ts';
import { startChild } from './childProcess.ts';
import { fillLot } from './lotOfThousands.ts';

/**
 * `npm run bench:pages`: what a person waits for, in headless Chromium with a processor 4 times slower and a network of
 * 1.6 Mbit/s. The aims are 1.0 s to the largest contentful paint and 100 ms an interaction (first figures are of an
 * empty browser, the second of one that has been here before). The lot holds 3,000 coaches
 * and each figure is the median of 5 visits, unless two arguments say otherwise.
 */
const COACHES = Number(process.argv[2] ?? 3000);
const VISITS = Number(process.argv[3] ?? 5);
const DEALER = { email: 'bench@example.com', password: 'a long enough secret' };
const OWNER = { email: 'owner@example.com', password: 'another long secret' };
const PROCESSOR_SLOWER = 4;
const BYTES_PER_SECOND = 1_600_000 / 8;

interface Visit {
  readonly paintMs: number;
  readonly longestInteractionMs: number;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

async function slowDown(page: Page): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: PROCESSOR_SLOWER });
  await devtools.send('Network.enable');
  await devtools.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: 0,
    downloadThroughput: BYTES_PER_SECOND,
    uploadThroughput: BYTES_PER_SECOND,
  });
}

/** Kept from the beginning of each page: an observer that comes later may miss what was there. */
const OBSERVE = `
  window.seen = { paintMs: 0, interactionMs: 0 };
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) seen.paintMs = entry.startTime;
  }).observe({ type: 'largest-contentful-paint', buffered: true });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) seen.interactionMs = Math.max(seen.interactionMs, entry.duration);
  }).observe({ type: 'event', durationThreshold: 16, buffered: true });
`;

interface Scene {
  readonly name: string;
  readonly person: typeof DEALER;
  readonly path: string;
  /** What must be there for the page to have answered. */
  readonly answered: (page: Page) => Promise<unknown>;
  readonly interact: (page: Page) => Promise<unknown>;
}

async function visitOnce(browser: Browser, url: string, scene: Scene, again: boolean): Promise<Visit> {
  const context = await browser.newContext({ baseURL: url, viewport: PHONE_SIZE });
  const first = await context.newPage();
  await first.goto('/');
  await signIn(first, scene.person);
  if (again) {
    await first.goto(scene.path);
    await scene.answered(first);
    await first.evaluate('navigator.serviceWorker.ready');
  } else {
    // Signed in, and nothing of the pages on the device.
    await first.evaluate(`navigator.serviceWorker.getRegistrations()
      .then((all) => Promise.all(all.map((one) => one.unregister())))
      .then(() => caches.keys()).then((names) => Promise.all(names.map((name) => caches.delete(name))))
      .then(() => localStorage.clear())`);
  }
  await first.close();
  const page = await context.newPage();
  await page.addInitScript(OBSERVE);
  await slowDown(page);
  if (!again) {
    const devtools = await context.newCDPSession(page);
    await devtools.send('Network.clearBrowserCache');
  }
  await page.goto(scene.path);
  await scene.answered(page);
  await page.waitForLoadState('networkidle');
  const paintMs = await page.evaluate<number>('seen.paintMs');
  await scene.interact(page);
  await page.waitForLoadState('networkidle');
  const longestInteractionMs = await page.evaluate<number>('seen.interactionMs');
  await context.close();
  return { paintMs, longestInteractionMs };
}

/** An owner of one coach, let in by the dealer, with a room that has a course. */
async function addOwner(dealer: Api): Promise<{ coachId: string; roomId: string }> {
  const coach = await addCoach(dealer, 'Juniper 31');
  const room = await addRoom(dealer, coach, 'Bedroom');
  const sides = [
    { side: 'front', runningAmps: 8.5 },
    { side: 'rear', runningAmps: 8.2 },
  ];
  await sendDays(dealer, coach, room, () => sides, 30);
  for (;;) {
    const { pending } = await ask<{ pending: number }>(dealer, 'GET', `/rooms/${room.id}/status`);
    if (pending === 0) break;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  const { invitation } = await ask<{ invitation: string }>(dealer, 'POST', `/coaches/${coach.id}/grants`, {
    email: OWNER.email,
    role: 'owner',
  });
  await ask({ ...dealer, token: '' }, 'POST', `/invitations/${invitation}`, { password: OWNER.password });
  return { coachId: coach.id, roomId: room.id };
}

async function scenesOf(dealer: Api): Promise<Scene[]> {
  const { roomId } = await addOwner(dealer);
  return [
    {
      name: 'owner: the coach',
      person: OWNER,
      path: '/',
      answered: (page) => page.locator('.answer').first().waitFor(),
      interact: (page) => page.getByText('Settings').click(),
    },
    {
      name: 'owner: a room',
      person: OWNER,
      path: `/rooms/${roomId}`,
      answered: (page) => page.locator('.answer').first().waitFor(),
      interact: (page) => page.getByText('Record work').click(),
    },
    {
      name: `dealer: a lot of ${COACHES}`,
      person: DEALER,
      path: '/',
      answered: (page) => page.locator('.coach').first().waitFor(),
      interact: async (page) => {
        await page.getByLabel('Select Stock').first().check();
        await page.getByText('Filters and order').click();
        await page.getByLabel('Search coach, model or room').pressSequentially('stock 12');
        await page.getByText(/coaches? shown/).waitFor();
      },
    },
  ];
}

/** Scrolls the lot until so many coaches are there, and answers the longest task on the way, milliseconds. */
async function longestTaskWhileScrolling(browser: Browser, url: string): Promise<number> {
  const context = await browser.newContext({ baseURL: url, viewport: PHONE_SIZE });
  const page = await context.newPage();
  await page.goto('/');
  await signIn(page, DEALER);
  await page.locator('.coach').first().waitFor();
  await slowDown(page);
  await page.evaluate(`
    window.longest = 0;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) longest = Math.max(longest, entry.duration);
    }).observe({ type: 'longtask' });
  `);
  while ((await page.locator('.coach').count()) < 500) {
    await page.mouse.wheel(0, 4000);
    await page.waitForTimeout(50);
  }
  const longest = await page.evaluate<number>('longest');
  await context.close();
  return longest;
}

/** How long the service takes for the lot's first page and its numbers, milliseconds, median of some. */
async function answerMs(api: Api, path: string): Promise<number> {
  const took: number[] = [];
  for (let i = 0; i < 2 * VISITS; i++) {
    const begin = performance.now();
    await ask(api, 'GET', path);
    took.push(performance.now() - begin);
  }
  return median(took);
}

await withPostgres(async (postgres) => {
  const databaseUrl = await postgres.newDatabase('pages');
  const service = await startChild('serviceProcess.ts', { DATABASE_URL: databaseUrl });
  const url = String(service.said.url);
  const browser = await launchChromium();
  try {
    const dealer = await apiOf(url, DEALER.email, DEALER.password);
    const scenes = await scenesOf(dealer);
    await fillLot(databaseUrl, DEALER.email, COACHES);
    const since = encodeURIComponent(new Date(Date.now() - 86_400_000).toISOString());
    console.log(
      `the lot's first page, answered in ${(await answerMs(dealer, `/overview?limit=25&since=${since}`)).toFixed(0)} ms`,
    );
    console.log(
      `the lot's numbers, answered in ${(await answerMs(dealer, `/overview/summary?since=${since}`)).toFixed(0)} ms`,
    );
    for (const scene of scenes)
      for (const again of [false, true]) {
        const visits: Visit[] = [];
        for (let i = 0; i < VISITS; i++) visits.push(await visitOnce(browser, url, scene, again));
        const paint = median(visits.map((visit) => visit.paintMs)).toFixed(0);
        const interaction = median(visits.map((visit) => visit.longestInteractionMs)).toFixed(0);
        console.log(
          `${scene.name}, ${again ? 'again' : 'first visit'}: painted in ${paint} ms (aim 1000), longest interaction ${interaction} ms (aim 100)`,
        );
      }
    const longest = await longestTaskWhileScrolling(browser, url);
    console.log(`scrolling through 500 coaches: longest task ${longest.toFixed(0)} ms`);
  } finally {
    await browser.close();
    await service.stop();
  }
});
