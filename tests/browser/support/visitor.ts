import type { BrowserContextOptions, Page } from 'playwright-core';
import type { Api } from './api.ts';
import type { Devices, Visit } from './devices.ts';

/** One person at one browser, with all that went wrong in it. */
export interface Visitor {
  readonly page: Page;
  /** Errors of scripts, broken security rules and failed loads of the pages' own files. */
  readonly troubles: string[];
  readonly leave: () => Promise<void>;
}

/** Long enough for a busy machine, short enough to fail before the test's own time is up. */
const WAIT_MS = 45_000;

export async function visit(devices: Devices, options: Visit = {}): Promise<Visitor> {
  const { context, giveBack } = await devices.take(options);
  const page = await context.newPage();
  page.setDefaultTimeout(WAIT_MS);
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(error.message));
  page.on('console', (message) => {
    // A refusal by the API is logged by the browser itself, and told by the page: no trouble.
    if (message.type() === 'error' && !message.location().url.includes('/api/'))
      troubles.push(message.text());
  });
  return { page, troubles, leave: giveBack };
}

export interface Person {
  readonly email: string;
  readonly password: string;
}

export async function signIn(page: Page, person: Person): Promise<void> {
  await page.getByLabel('E-mail').fill(person.email);
  await page.getByLabel('Password').fill(person.password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await isSignedIn(page);
}

/** Waits for the page of somebody who is signed in. */
export async function isSignedIn(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Sign out', exact: true }).waitFor();
  await standsStill(page);
}

/** What a browser has kept of somebody who signed in before: whoever holds the cookie of a session is signed in. */
export function signedInAs({ url, token }: Api): { storageState: BrowserContextOptions['storageState'] } {
  const cookie = { name: 'session', value: token, path: '/', domain: new URL(url).hostname };
  const cookies = [{ ...cookie, expires: -1, httpOnly: true, secure: false, sameSite: 'Lax' as const }];
  return { storageState: { cookies, origins: [] } };
}

/**
 * Nothing more is on its way: what a person points at is where it was a moment ago, it does what it is there for also
 * where the service had drawn it, and what the page puts off until it is drawn has begun.
 */
export async function standsStill(page: Page): Promise<void> {
  await page.waitForFunction(`(async () => {
    const drawn = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    const waits = () => document.querySelector('.waiting, #answers') !== null;
    for (let frame = 0; frame < 3; frame++) {
      if (waits()) return false;
      await drawn();
    }
    return !waits();
  })()`);
}
