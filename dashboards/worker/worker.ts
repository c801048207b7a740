/// <reference lib="webworker" />
import { cacheFirst, forgetOlderShells, keepShell, shellAnswer } from './shell.ts';

// A script of a service worker has this scope, which the language's own types do not know.
const scope = self as unknown as ServiceWorkerGlobalScope;

/** What the API answers is kept by the pages themselves, who know whose it is; the others are for machines. */
const NO_PAGE = /^\/(api|problems|healthz|readyz|metrics)(\/|$)/;

scope.addEventListener('install', (event) => {
  event.waitUntil(keepShell().then(() => scope.skipWaiting()));
});

scope.addEventListener('activate', (event) => {
  event.waitUntil(forgetOlderShells().then(() => scope.clients.claim()));
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== scope.location.origin) return;
  if (NO_PAGE.test(pathname)) return;
  if (request.mode === 'navigate') event.respondWith(shellAnswer(request));
  else if (pathname.startsWith('/assets/')) event.respondWith(cacheFirst(request));
});
