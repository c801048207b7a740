import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';

const dist = fileURLToPath(new URL('../../dashboards/dist/', import.meta.url));
const BUDGET_BYTES = 90 * 1024;

test('what a first visit fetches stays within 90 kB, compressed', async () => {
  const page = await readFile(join(dist, 'index.html'), 'utf8');
  const named = [...page.matchAll(/(?:src|href)="\/([^"]+)"/g)].map((match) => match[1]);
  expect(named.some((name) => name.endsWith('.js'))).toBe(true);
  expect(named.some((name) => name.endsWith('.css'))).toBe(true);
  const files = await Promise.all(named.map((name) => readFile(join(dist, name))));
  const bytes = [Buffer.from(page), ...files].reduce((sum, file) => sum + gzipSync(file).length, 0);
  expect(bytes).toBeLessThanOrEqual(BUDGET_BYTES);
});

test('the page carries no inline script, style or handler, as the security policy demands', async () => {
  const page = await readFile(join(dist, 'index.html'), 'utf8');
  expect(page).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>/);
  expect(page).not.toMatch(/<style|\sstyle=|\son[a-z]+=/i);
});
