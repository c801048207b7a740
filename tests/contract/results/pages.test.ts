import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { buildApp } from '../../../server/app.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });

function read(path: string, headers: Record<string, string> = {}): Promise<Response> {
  return fetch(service.url + path, { headers });
}

describe('every answer', () => {
  test.each(['/', '/api/v1/coaches', '/api/openapi.json', '/healthz'])(
    '%s tells browsers to be strict',
    async (path) => {
      const { headers } = await read(path);
      expect(headers.get('content-security-policy')).toBe(
        "default-src 'self';base-uri 'none';object-src 'none';frame-ancestors 'none';form-action 'self'",
      );
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('x-frame-options')).toBe('DENY');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('x-powered-by')).toBeNull();
      expect(headers.get('access-control-allow-origin')).toBeNull();
    },
  );

  test('of the API is kept by nobody on the way', async () => {
    for (const path of ['/api/v1/coaches', '/api/v1/nothing'])
      expect((await read(path)).headers.get('cache-control')).toBe('no-store');
  });

  test('is compressed for those who take it', async () => {
    const compressed = await read('/api/openapi.json', { 'accept-encoding': 'gzip' });
    expect(compressed.headers.get('content-encoding')).toBe('gzip');
    expect(await compressed.json()).toHaveProperty('openapi');
  });
});

const BROWSER = 'text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8';

describe('the pages', () => {
  test.each(['/', '/coaches/any', '/rooms/any/compare', '/rooms/any/', '/set-up'])(
    'answer %s, which they find out about',
    async (path) => {
      const page = await read(path);
      expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
      expect(page.headers.get('cache-control')).toBe('no-cache');
      expect(await page.text()).toContain('<script');
    },
  );

  test.each(['/', '/settings', '/rooms/any'])('answer %s also to whoever wants JSON', async (path) => {
    const page = await read(path, { accept: 'application/json' });
    expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
  });

  test.each(['/rooms/%', '/coaches/%zz', '/?q=%00', '/rooms/any?q=%00'])(
    'answer %s as any other, whatever it holds',
    async (path) => {
      const page = await read(path, { accept: BROWSER });
      expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
      expect(page.headers.get('content-security-policy')).toContain("default-src 'self'");
    },
  );

  const NOWHERE = [
    '/nothing',
    '/nothing.json',
    '/.env',
    '/API/v1/coaches',
    '/rooms/any/strokes',
    '/coaches',
    '/%',
    '/%zz/any',
    '/rooms//',
    '/rooms//compare',
    '/strokes/%00',
    '/nothing?q=%00',
  ];

  test.each(NOWHERE)('are none at %s: 404 with the page that says so, or as a problem', async (path) => {
    for (const accept of ['application/json', '*/*', 'image/png']) {
      const told = await read(path, { accept });
      expect([told.status, told.headers.get('content-type')]).toEqual([404, 'application/problem+json']);
      expect(await told.json()).toMatchObject({ type: '/problems/not-found', status: 404 });
    }
    for (const accept of [BROWSER, 'text/html']) {
      const shown = await read(path, { accept });
      expect([shown.status, shown.headers.get('content-type')]).toEqual([404, 'text/html; charset=utf-8']);
      expect(shown.headers.get('cache-control')).toBe('no-store');
      expect(await shown.text()).toContain('<script');
    }
  });

  test('come as small as the build made them, and as they are to whoever takes no compression', async () => {
    const script = /\/assets\/[^"]+\.js/.exec(await (await read('/')).text())?.[0] ?? '';
    const answers = new Map<string, string>();
    const lengths = [];
    for (const coding of ['br', 'gzip', 'identity']) {
      const answer = await read(script, { 'accept-encoding': coding });
      expect(answer.headers.get('content-encoding') ?? 'identity').toBe(coding);
      expect(answer.headers.get('content-type')).toMatch(/^(text|application)\/javascript/);
      expect(answer.headers.get('cache-control')).toContain('immutable');
      expect(answer.headers.get('vary')).toMatch(/accept-encoding/i);
      lengths.push(Number(answer.headers.get('content-length')));
      answers.set(await answer.text(), coding);
    }
    expect(answers.size).toBe(1);
    expect(lengths).toEqual([...lengths].sort((one, other) => one - other));
  });

  test('keep what carries its content in its name, and ask again for the rest', async () => {
    const script = /\/assets\/[^"]+\.js/.exec(await (await read('/')).text())?.[0] ?? '';
    const kept = await read(script);
    expect(kept.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect(kept.headers.get('content-type')).toMatch(/javascript/);
    expect((await read('/assets/missing.js')).status).toBe(404);
  });
});

test('where the pages are not built, the API works and any page says how to build them', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'slideload-pages-'));
  const app = await buildApp({ pool: service.pool, db: service.db }, { pagesFolder: folder });
  for (const path of ['/', '/rooms/any']) {
    const page = await app.inject(path);
    expect([page.statusCode, page.headers['content-type']]).toEqual([200, 'text/plain; charset=utf-8']);
    expect(page.body).toContain('npm run prepare');
  }
  expect((await app.inject('/healthz')).json()).toEqual({ status: 'ok' });
  await app.close();
  await rm(folder, { recursive: true });
});
