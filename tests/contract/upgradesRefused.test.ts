import { once } from 'node:events';
import { request as httpRequest, type IncomingMessage } from 'node:http';
import { text } from 'node:stream/consumers';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startService, type TestService } from '../support/service.ts';

let service: TestService;
beforeAll(async () => {
  service = await startService({ worker: false });
});
afterAll(() => service?.stop());

/** Asks for a WebSocket at an address, with a whole handshake. Null: it was upgraded. */
async function upgrade(path: string, headers: object = {}): Promise<IncomingMessage | null> {
  const asking = httpRequest(service.url + path, {
    headers: {
      connection: 'Upgrade',
      upgrade: 'websocket',
      'sec-websocket-version': '13',
      'sec-websocket-key': Buffer.from('sixteen bytes it').toString('base64'),
      ...headers,
    },
  });
  const upgraded = once(asking, 'upgrade').then(([, socket]) => {
    socket.destroy();
    return null;
  });
  const answered = once(asking, 'response').then(([response]) => response as IncomingMessage);
  asking.end();
  return Promise.race([upgraded, answered]);
}

test.each([
  '/api/v1/nope',
  '/api/v1/strokes/live/nope',
  '/healthz',
  '/api/v1/coaches',
  '/api/v1/session',
  '/',
  '/coaches/1',
  '/assets/nothing.js',
])('%s has no WebSocket: 404 before any upgrade', async (path) => {
  const answer = await upgrade(path);
  expect([answer?.statusCode, answer?.headers['content-type']]).toEqual([404, 'application/problem+json']);
  if (answer === null) throw new Error('It was upgraded.');
  expect(JSON.parse(await text(answer))).toMatchObject({ type: '/problems/not-found', status: 404 });
});

test('those that have one are upgraded, also before anybody signed in', async () => {
  expect(await upgrade('/api/v1/live')).toBeNull();
  expect(await upgrade('/api/v1/strokes/live')).toBeNull();
});
