import type { Page } from 'playwright-core';
import type { Place } from './place.ts';
import type { Person } from './visitor.ts';

/** One more person of the first person's account, who owns what is there. */
export async function addOwner(place: Place): Promise<Person> {
  const service = place.service();
  const dealer = await service.request('GET', '/session', { token: await service.signIn() });
  return service.newMember({ person: dealer.body.person }, 'owner');
}

/** Waits until the pages are kept on the device, and for the page to be one of them. */
export async function keptOnDevice(page: Page): Promise<void> {
  await page.evaluate('navigator.serviceWorker.ready');
  await page.waitForFunction(
    'caches.keys().then((names) => names.some((name) => name.startsWith("shell-")))',
  );
}
