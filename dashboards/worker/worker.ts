/// <reference lib="webworker" />
import { cacheFirst, forgetOlderShells, keepShell, pageAnswer } from './shell.ts';

// A script of a service worker has this scope, which the language's own types do not know.
const scope = self as unknown as ServiceWorkerGlobalScope;

/** What the API answers is kept by the pages themselves, who know whose it is; the others are for machines. */
const NO_PAGE = /^\/(api|problems|healthz|readyz|metrics)(\/|$)/;

scope.addEventListener('install', (event) => {
  event.waitUntil(keepShell().then(() => scope.skipWaiting()));
});

scope.addEventListener('activate', (event) => {
  const { navigationPreload } = scope.registration;
  // Where a browser knows that: the service is asked for the page while this program is still being started.
  event.waitUntil(
    Promise.all([forgetOlderShells(), navigationPreload?.enable()]).then(() => scope.clients.claim()),
  );
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== scope.location.origin) return;
  if (NO_PAGE.test(pathname)) return;
  if (request.mode === 'navigate') event.respondWith(pageAnswer(asked(event)));
  else if (pathname.startsWith('/assets/')) event.respondWith(cacheFirst(request));
});

/** The page as the service answers it: it may be on its way already. */
async function asked(event: FetchEvent): Promise<Response> {
  return (await event.preloadResponse) ?? fetch(event.request);
}
