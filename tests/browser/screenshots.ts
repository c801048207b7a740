import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as delay } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { pagesOfStates, shootTroubles } from './screenshotStates.ts';
import { type Api, apiOf, ask } from './support/api.ts';
import { launchChromium } from './support/chromium.ts';
import { Devices, PHONE_SIZE } from './support/devices.ts';
import { type Person, signIn, visit } from './support/visitor.ts';

/**
 * Pictures of every page on a phone and on a desk, light and dark, into `screenshots/`. Give a running service
 * as `npm run screenshots -- http://127.0.0.1:8080`, with `ADMIN_EMAIL` and `ADMIN_PASSWORD` of a person in it;
 * without one a service of its own is started with the demo scenario and taken away again. In its own it also makes
 * coaches with nothing, little and far too much in them, and shows a page that waits, fails and has no network.
 */
const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = join(root, 'screenshots');
const SIZES = [
  { name: 'phone', ...PHONE_SIZE },
  { name: 'desk', width: 1440, height: 900 },
];
const SCHEMES = ['light', 'dark'] as const;

const person: Person = {
  email: process.env.ADMIN_EMAIL ?? 'mara@example.com',
  password: process.env.ADMIN_PASSWORD ?? 'a long enough secret',
};

interface Running {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

async function startDemo(): Promise<Running> {
  const dataDir = await mkdtemp(join(tmpdir(), 'slideload-screenshots-'));
  const service = spawn(process.execPath, ['--enable-source-maps', 'server/dist/main.mjs'], {
    cwd: root,
    env: {
      ...process.env,
      PORT: '8931',
      DATA_DIR: dataDir,
      DEMO: '1',
      ADMIN_EMAIL: person.email,
      ADMIN_PASSWORD: person.password,
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<void>((resolve) => service.once('exit', () => resolve()));
  const stop = async () => {
    service.kill('SIGTERM');
    await ended;
    await rm(dataDir, { recursive: true, force: true });
  };
  for await (const line of createInterface({ input: service.stdout })) {
    const ready = /^ready (\S+)$/.exec(line);
    if (ready !== null) return { url: ready[1], stop };
  }
  await stop();
  throw new Error('The service ended before it was ready.');
}

interface Overview {
  readonly items: readonly { readonly rooms: readonly { readonly id: string; readonly pending: number }[] }[];
}

interface Warnings {
  readonly items: readonly {
    readonly kind: string;
    readonly roomId: string;
    readonly latestStrokeId: string;
  }[];
}

/** The rooms, most worrying first, once every stroke has been worked out. */
async function roomsWhenAnalysed(api: Api): Promise<string[]> {
  for (;;) {
    const { items } = await ask<Overview>(api, 'GET', '/overview');
    const rooms = items.flatMap((coach) => coach.rooms);
    if (rooms.every((room) => room.pending === 0)) return rooms.map((room) => room.id);
    await delay(500);
  }
}

/** The page of the first work done that there is. */
async function comparisonOf(api: Api, rooms: readonly string[]): Promise<Record<string, string>> {
  for (const room of rooms) {
    const { items } = await ask<{ items: { id: string }[] }>(api, 'GET', `/rooms/${room}/services`);
    if (items.length > 0) return { 'before-and-after': `/rooms/${room}/compare?service=${items[0].id}` };
  }
  return {};
}

/** The pages worth a picture: a room that draws more than it did, one with spikes, a calm one, and a stroke. */
async function pagesOf(url: string): Promise<Record<string, string>> {
  const api = await apiOf(url, person.email, person.password);
  const rooms = await roomsWhenAnalysed(api);
  if (rooms.length === 0) return { coaches: '/' };
  const { items: warnings } = await ask<Warnings>(api, 'GET', '/warnings?state=open');
  const rising = warnings.find((warning) => warning.kind === 'rising-draw') ?? warnings[0];
  const spiked = warnings.find((warning) => warning.kind === 'stall-spike') ?? rising;
  const worst = await ask<{ items: { id: string }[] }>(api, 'GET', '/overview?limit=1');
  const pages: Record<string, string> = {
    coaches: '/',
    'coaches-none': '/?q=nothing%20has%20this%20name',
    coach: `/coaches/${worst.items[0].id}`,
    'new-coach': '/new-coach',
    settings: '/settings',
    notices: '/notices',
    people: '/people',
    kept: '/kept',
    record: '/record',
    'room-calm': `/rooms/${rooms[rooms.length - 1]}`,
  };
  if (rising === undefined) return pages;
  return {
    ...pages,
    room: `/rooms/${rising.roomId}`,
    'room-spikes': `/rooms/${spiked.roomId}`,
    stroke: `/strokes/${spiked.latestStrokeId}`,
    upload: `/rooms/${spiked.roomId}/upload`,
    ...(await comparisonOf(api, rooms)),
  };
}

async function picture(
  devices: Devices,
  pages: Record<string, string>,
  troubled: string | null,
): Promise<void> {
  for (const { name, ...viewport } of SIZES) {
    for (const colorScheme of SCHEMES) {
      const { page, leave } = await visit(devices, { viewport, colorScheme });
      const shoot = async (what: string) => {
        // As high as all of it: what is out of sight is not drawn.
        const height = await page.evaluate<number>('document.documentElement.scrollHeight');
        await page.setViewportSize({ ...viewport, height });
        await page.screenshot({ path: join(folder, `${what}-${name}-${colorScheme}.png`), fullPage: true });
        await page.setViewportSize(viewport);
      };
      await page.goto('/', { waitUntil: 'networkidle' });
      await shoot('sign-in');
      await signIn(page, person);
      for (const [what, path] of Object.entries(pages)) {
        await page.goto(path, { waitUntil: 'networkidle' });
        await shoot(what);
      }
      await page.goto('/set-up#example', { waitUntil: 'networkidle' });
      await shoot('set-up');
      if (troubled !== null) await shootTroubles(page, troubled, shoot);
      await leave();
    }
  }
}

const given = process.argv[2];
const running = given === undefined ? await startDemo() : { url: given, stop: async () => {} };
const browser = await launchChromium();
try {
  await mkdir(folder, { recursive: true });
  const pages = await pagesOf(running.url);
  const api = await apiOf(running.url, person.email, person.password);
  const states = given === undefined ? await pagesOfStates(api) : {};
  await roomsWhenAnalysed(api);
  await picture(
    new Devices(browser, running.url),
    { ...pages, ...states },
    given === undefined ? pages.room : null,
  );
  console.log(`The pictures are in ${folder}.`);
} finally {
  await browser.close();
  await running.stop();
}
