import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

/** Where Chromium is looked for: `CHROMIUM_PATH`, else where Debian puts it. */
export const CHROMIUM_PATH = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';

/** Browser tests are skipped, loudly and by name, where there is no Chromium. */
export const hasChromium = existsSync(CHROMIUM_PATH);
if (!hasChromium) {
  console.warn(
    `Browser tests are skipped: no Chromium at ${CHROMIUM_PATH}. Install it or set CHROMIUM_PATH.`,
  );
}

/** Nothing but our pages, and no process of its own for what draws without a graphics card: both cost each new page time. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: CHROMIUM_PATH,
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--in-process-gpu',
      '--disable-extensions',
      '--disable-component-extensions-with-background-pages',
      '--disable-default-apps',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

let ofProcess: Promise<Browser> | undefined;

/**
 * The browser of all test files that this process runs, begun for the first of them. It ends with the process. Nobody
 * closes it: each file closes the devices that it took.
 */
export function chromiumOfProcess(): Promise<Browser> {
  ofProcess ??= launchChromium();
  return ofProcess;
}
