import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { isPageAddress, PAGE_ADDRESSES } from '../../../server/requests/pageAddresses.ts';

test('the service knows the very addresses that the pages have', async () => {
  const app = await readFile(new URL('../../../dashboards/src/app.tsx', import.meta.url), 'utf8');
  const named = [...app.matchAll(/(?:matchPath\(|path === )'([^']+)'/g)].map(([, address]) => address);
  expect([...named].sort()).toEqual([...PAGE_ADDRESSES].sort());
});

test('they are told from all others', () => {
  for (const path of ['/', '/settings', '/settings/', '/rooms/1', '/rooms/%2e%2e/', '/rooms/1/compare'])
    expect(isPageAddress(path), path).toBe(true);
  for (const path of [
    '/nothing',
    '/.env',
    '/Settings',
    '/rooms',
    '/rooms/',
    '/rooms/1/nothing',
    '/api',
    '/coaches',
  ])
    expect(isPageAddress(path), path).toBe(false);
});
