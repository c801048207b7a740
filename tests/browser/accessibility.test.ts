import type { BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { type Api, ask } from './support/api.ts';
import { NARROW } from './support/devices.ts';
import { addFleet, type Fleet } from './support/fleet.ts';
import { describePages } from './support/place.ts';
import { isSignedIn, signedInAs } from './support/visitor.ts';

interface State {
  readonly name: string;
  readonly path: (fleet: Fleet) => string;
  /** Brings the page into the state; it is there when this ends. */
  readonly reach: (page: Page) => Promise<void>;
}

const title = (page: Page, name: RegExp | string) => page.getByRole('heading', { level: 1, name }).waitFor();
let workId = '';
let emptyWorkId = '';

const STATES: readonly State[] = [
  {
    name: 'the coaches',
    path: () => '/',
    reach: async (page) => {
      await page.getByRole('link', { name: /^Bedroom/ }).waitFor();
      await page.getByLabel('Select Juniper 31').check();
      await page.getByLabel('Note for all of them (optional)').waitFor();
    },
  },
  {
    name: 'the coaches when none fits',
    path: () => '/?q=nothing%20has%20this%20name&silent=true',
    reach: (page) => page.getByRole('heading', { name: 'No coach matches' }).waitFor(),
  },
  {
    name: 'a coach, all of it opened',
    path: (fleet) => `/coaches/${fleet.coach.id}`,
    reach: async (page) => {
      await page
        .getByRole('img', { name: /^Picture of the last strokes/ })
        .first()
        .waitFor();
      await page.getByRole('heading', { name: 'Add and change' }).waitFor();
      for (const form of await page.locator('.opens > summary').all()) await form.click();
      await page.getByLabel('Name of the room').waitFor();
      await page.getByRole('button', { name: 'Delete', exact: true }).last().click();
      await page.getByText('The name is not the same.').waitFor();
      await page.getByLabel('Name of the logger').last().fill('Spare');
      await page.getByRole('button', { name: 'Add a logger' }).click();
      await page.getByText('It is shown this once.').waitFor();
    },
  },
  {
    name: 'a coach with a name made to do harm',
    path: (fleet) => `/coaches/${fleet.hostileCoach.id}`,
    reach: (page) => page.getByRole('heading', { level: 2, name: 'Loggers' }).waitFor(),
  },
  {
    name: 'a coach that is not there',
    path: () => '/coaches/01900000-0000-7000-8000-000000000000',
    reach: (page) => title(page, 'This coach was not found'),
  },
  {
    name: 'adding a coach, wrongly filled',
    path: () => '/new-coach',
    reach: async (page) => {
      await page.getByRole('button', { name: 'Add a coach' }).click();
      await page.getByText('Enter a name.').waitFor();
    },
  },
  {
    name: 'the settings',
    path: () => '/settings',
    reach: (page) => page.getByRole('heading', { name: 'This is how it looks' }).waitFor(),
  },
  {
    name: 'who did what',
    path: () => '/record',
    reach: (page) => page.getByText('Work recorded').first().waitFor(),
  },
  {
    name: 'who did what, when nothing was',
    path: () => '/record?kind=work&to=2001-01-01',
    reach: (page) => page.getByRole('heading', { name: 'Nothing of this kind was done' }).waitFor(),
  },
  {
    name: 'adding a recording from a file',
    path: (fleet) => `/rooms/${fleet.worsening.id}/upload`,
    reach: (page) => title(page, /./),
  },
  {
    name: 'a room with warnings, all of it opened',
    path: (fleet) => `/rooms/${fleet.worsening.id}`,
    reach: async (page) => {
      await page.getByText('As a table').first().click();
      await page.getByText('Record work').click();
      await page.getByText('Another day, one side, or notes').click();
      await page.getByText('Earlier warnings').click();
      await page
        .getByRole('button', { name: /^I have seen this/ })
        .first()
        .click();
      await page.getByLabel('Note (optional)').waitFor();
      await page.locator('canvas').first().waitFor();
    },
  },
  {
    name: 'a room without strokes and with a name made to do harm',
    path: (fleet) => `/rooms/${fleet.hostile.id}`,
    reach: (page) => page.getByText('No stroke has come in yet.').waitFor(),
  },
  {
    name: 'a room that is not there',
    path: () => '/rooms/01900000-0000-7000-8000-000000000000',
    reach: (page) => title(page, 'This room was not found'),
  },
  {
    name: 'a stroke, its tables opened',
    path: (fleet) => `/strokes/${fleet.strokeIds[fleet.strokeIds.length - 1]}`,
    reach: async (page) => {
      await page.locator('canvas').nth(1).waitFor();
      for (const table of await page.getByText('As a table').all()) await table.click();
    },
  },
  {
    name: 'before and after, its numbers opened',
    path: (fleet) => `/rooms/${fleet.worsening.id}/compare?service=${workId}`,
    reach: async (page) => {
      await page.getByText('How it was worked out.').waitFor();
      for (const numbers of await page.getByText('All numbers').all()) await numbers.click();
    },
  },
  {
    name: 'before and after with too few strokes',
    path: (fleet) => `/rooms/${fleet.worsening.id}/compare?service=${emptyWorkId}`,
    reach: (page) => page.getByText('It takes two strokes before the work').waitFor(),
  },
  {
    name: 'the choice of two spans, wrongly filled',
    path: (fleet) => `/rooms/${fleet.worsening.id}/compare`,
    reach: async (page) => {
      await page.getByRole('button', { name: 'Compare' }).click();
      await page.getByText('Enter a day.').first().waitFor();
    },
  },
  {
    name: 'an address that leads nowhere',
    path: () => '/nowhere',
    reach: (page) => title(page, 'Nothing here'),
  },
];

const PHONE = { colorScheme: 'light', ...NARROW } as const;
const DESK = { colorScheme: 'dark', viewport: { width: 1440, height: 900 } } as const;

/** On a phone by day and at a desk by night, as it stands. */
async function expectNoViolations(page: Page, state: string): Promise<void> {
  for (const { colorScheme, viewport } of [PHONE, DESK]) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await page.setViewportSize(viewport);
    expect.soft(await violationsOn(page), `${state}, ${colorScheme}, ${viewport.width} wide`).toEqual([]);
  }
}

describePages('by the published rules of accessibility', (place) => {
  let fleet: Fleet;
  let signedIn: BrowserContextOptions;
  beforeAll(async () => {
    const api: Api = await place.api();
    fleet = await addFleet(api);
    const record = async (at: string) =>
      (
        await ask<{ id: string }>(api, 'POST', `/rooms/${fleet.worsening.id}/services`, {
          kind: 'adjusted',
          at,
        })
      ).id;
    workId = await record('2026-04-07T08:00:00Z');
    emptyWorkId = await record('2026-09-01T08:00:00Z');
    signedIn = signedInAs(api);
  });

  test.each(STATES)('no rule is broken by $name', async ({ name, path, reach }) => {
    const { page } = await place.visit(path(fleet), { ...PHONE, ...signedIn });
    await isSignedIn(page);
    await reach(page);
    await expectNoViolations(page, name);
  });

  test('no rule is broken by signing in and setting up', async () => {
    const { page } = await place.visit('/', PHONE);
    await page.getByRole('button', { name: 'Sign in' }).waitFor();
    await expectNoViolations(page, 'empty');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByText('Enter your password.').waitFor();
    await expectNoViolations(page, 'wrongly filled');
    await page.goto('/set-up#example');
    await title(page, /./);
    await expectNoViolations(page, 'setting up');
  });

  test('no rule is broken by a page without the service', async () => {
    const { page } = await place.visit('/', { ...PHONE, ...signedIn });
    await page.route('**/api/v1/rooms/**', (route) => route.abort());
    await page.goto(`/rooms/${fleet.steady.id}`);
    await page.getByText('The service cannot be reached.').first().waitFor();
    await expectNoViolations(page, 'without the service');
  });

  test('the rules are in force: a picture without words is found', async () => {
    const { page } = await place.visit('/');
    await page.getByRole('button', { name: 'Sign in' }).waitFor();
    await page.evaluate(`document.querySelector('main').append(new Image())`);
    expect(await violationsOn(page)).toEqual([expect.stringMatching(/^image-alt: /)]);
  });
});
