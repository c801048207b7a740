import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';

/** How somebody comes: with what device, and whether it is one that nobody had before. */
export interface Visit extends BrowserContextOptions {
  readonly onNewDevice?: boolean;
  /** Turns the clock of the pages: a window keeps a clock that was turned, so nobody else gets this one. */
  readonly turnsClock?: boolean;
}

/** What one person browses with: it shares nothing with another. */
export interface Device {
  readonly context: BrowserContext;
  /** Closes and forgets all, and lets the next who asks for such a device have it. */
  readonly giveBack: () => Promise<void>;
}

const DESK = { width: 1440, height: 900 };

export const PHONE_SIZE = { width: 390, height: 844 };
/** A window as small as a phone's, at a desk. */
export const NARROW = { viewport: PHONE_SIZE };
/** Under a finger. */
export const PHONE = { ...NARROW, hasTouch: true, isMobile: true };

/**
 * Devices on which people visit one service, all within a browser that others use too. One that was given back is taken again: its window
 * stands, and a process is ready to draw in it; a new one takes three times the processor time to show its first page.
 * What files that process has in its memory stays there: whoever counts what is fetched asks for a new device.
 */
export class Devices {
  readonly #browser: Browser;
  readonly #url: string;
  readonly #free = new Map<string, Device[]>();
  readonly #contexts: BrowserContext[] = [];

  constructor(browser: Browser, url: string) {
    this.#browser = browser;
    this.#url = url;
  }

  async take({ storageState, onNewDevice = false, turnsClock = false, ...options }: Visit): Promise<Device> {
    const kind = JSON.stringify(options);
    const used = onNewDevice || turnsClock ? undefined : this.#free.get(kind)?.pop();
    const device = used ?? (await this.#make(options, turnsClock ? null : kind));
    if (typeof storageState === 'object') await device.context.addCookies(storageState.cookies);
    return device;
  }

  /** Of all who visited the service, nothing is left in the browser. */
  async close(): Promise<void> {
    await Promise.all(this.#contexts.map((context) => context.close()));
  }

  /** @param kind Under which it is taken again; null: never. */
  async #make(options: BrowserContextOptions, kind: string | null): Promise<Device> {
    const context = await this.#browser.newContext({
      baseURL: this.#url,
      viewport: DESK,
      locale: 'en-GB',
      timezoneId: 'Europe/Berlin',
      ...options,
    });
    this.#contexts.push(context);
    // The window closes with its last page.
    const blank = await context.newPage();
    const device: Device = {
      context,
      giveBack: async () => {
        if (kind === null) return context.close();
        await this.#empty(context, blank);
        this.#free.set(kind, [...(this.#free.get(kind) ?? []), device]);
      },
    };
    return device;
  }

  async #empty(context: BrowserContext, blank: Page): Promise<void> {
    await Promise.all(context.pages().map((page) => (page === blank ? undefined : page.close())));
    await context.setOffline(false);
    await context.clearCookies();
    const devtools = await context.newCDPSession(blank);
    await devtools.send('Network.clearBrowserCache');
    await devtools.send('Storage.clearDataForOrigin', { origin: this.#url, storageTypes: 'all' });
    await devtools.detach();
  }
}
