import { once } from 'node:events';
import { request as httpRequest, type IncomingMessage } from 'node:http';
import { text } from 'node:stream/consumers';
import { expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });

/** Asks for a WebSocket at an address, with a whole handshake. Null: it was upgraded. */
async function upgrade(path: string, headers: object = {}): Promise<IncomingMessage | null> {
  const asking = httpRequest(service.url + path, {
    headers: {
      connection: 'Upgrade',
      upgrade: 'websocket',
      'sec-websocket-version': '13',
      'sec-websocket-key': Buffer.from('sixteen bytes it').toString('base64'),
    },
  });
  for (const [name, value] of Object.entries(headers))
    if (value === undefined) asking.removeHeader(name);
    else asking.setHeader(name, value);
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

test.each([
  ['a version that is none of them', { 'sec-websocket-version': '12' }, 'Sec-WebSocket-Version'],
  ['no version', { 'sec-websocket-version': undefined }, 'Sec-WebSocket-Version'],
  ['no key', { 'sec-websocket-key': undefined }, 'Sec-WebSocket-Key'],
  ['a key of too few bytes', { 'sec-websocket-key': 'c2hvcnQ=' }, 'Sec-WebSocket-Key'],
  ['subprotocols that are no list', { 'sec-websocket-protocol': ',' }, 'Sec-WebSocket-Protocol'],
])('a handshake with %s is a problem that says so', async (_, headers, named) => {
  for (const path of ['/api/v1/live', '/api/v1/strokes/live']) {
    const answer = await upgrade(path, headers);
    if (answer === null) throw new Error('It was upgraded.');
    expect([answer.statusCode, answer.headers['content-type']]).toEqual([400, 'application/problem+json']);
    expect(answer.headers['sec-websocket-version']).toBe('13, 8');
    const body = JSON.parse(await text(answer));
    expect(body).toMatchObject({ type: '/problems/malformed-request', status: 400 });
    expect(body.detail).toContain(named);
  }
});
