import { gzipSync } from 'node:zlib';
import fastify from 'fastify';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { App } from '../../../server/appTypes.ts';
import { limitBodies } from '../../../server/limits/limitBodies.ts';
import { DEFAULT_LIMITS } from '../../../server/limits/limits.ts';
import { answerProblem } from '../../../server/requests/errorHandler.ts';
import { lingerBehind } from '../../../server/requests/lingerBehind.ts';
import { decompressBody, LARGE_BODY, LARGE_BODY_BYTES } from '../../../server/requests/requestBodies.ts';
import { takeJson } from '../../../server/requests/takeJson.ts';
import { sendRequest } from '../../support/request.ts';
import { sendWholeThenRead } from '../../support/sendWholeThenRead.ts';

/** The very parts that a route for large bodies stands on, with a route that says how much it got. */
let app: App;
let url: string;

beforeAll(async () => {
  app = fastify();
  app.setErrorHandler(answerProblem);
  app.decorateRequest('caller', null);
  await app.register(limitBodies, DEFAULT_LIMITS);
  await app.register(lingerBehind, DEFAULT_LIMITS);
  takeJson(app);
  app.addHook('preParsing', decompressBody);
  app.post('/api/large', { ...LARGE_BODY, config: { compressedBody: true } }, async (request) => ({
    got: JSON.stringify(request.body).length,
  }));
  url = await app.listen({ port: 0, host: '127.0.0.1' });
});
afterAll(() => app?.close());

function send(body: Uint8Array | string, headers: Record<string, string> = { 'content-encoding': 'gzip' }) {
  return sendRequest(url, 'POST', '/api/large', { body, headers });
}

const json = (bytes: number) => JSON.stringify('x'.repeat(bytes - 2));

test('takes 32 MiB, compressed and not', async () => {
  const largest = json(LARGE_BODY_BYTES);
  expect((await send(gzipSync(largest))).body).toEqual({ got: LARGE_BODY_BYTES });
  expect((await send(largest, {})).body).toEqual({ got: LARGE_BODY_BYTES });
});

test('refuses a byte more, compressed and not', async () => {
  const larger = json(LARGE_BODY_BYTES + 1);
  for (const answer of [await send(gzipSync(larger)), await send(larger, {})])
    expect([answer.status, answer.body.type]).toEqual([413, '/problems/body-too-large']);
});

test('cuts off a small body that unfolds to 4 GiB, without holding it', async () => {
  const part = gzipSync(Buffer.alloc(16 * 1024 * 1024, 0x20));
  const bomb = Buffer.concat(Array.from({ length: 256 }, () => part));
  const before = process.memoryUsage().rss;
  expect((await send(bomb)).status).toBe(413);
  expect(process.memoryUsage().rss - before).toBeLessThan(400 * 1024 * 1024);
});

const whole = gzipSync('{"name": "a"}');
test.each([
  ['no gzip at all', Buffer.from('{"name": "a"}')],
  ['gzip cut short', whole.subarray(0, whole.length - 9)],
  ['gzip with a wrong checksum', Buffer.concat([whole.subarray(0, -8), Buffer.alloc(8)])],
  ['gzip followed by rubbish', Buffer.concat([whole, Buffer.from('rubbish')])],
  ['an empty body', Buffer.alloc(0)],
])('%s is a clear 4xx', async (_, body) => {
  const answer = await send(body);
  expect([answer.status, answer.body.type], answer.text).toEqual([400, '/problems/malformed-request']);
});

test.each(['br', 'deflate', 'gzip, gzip', 'x-unknown'])('Content-Encoding %s is 415', async (encoding) => {
  const answer = await send(whole, { 'content-encoding': encoding });
  expect([answer.status, answer.headers.get('accept-encoding')]).toEqual([415, 'gzip, identity']);
});

test('the encoding may be written in capitals, and identity says nothing', async () => {
  expect((await send(whole, { 'content-encoding': 'GZIP' })).status).toBe(200);
  expect((await send('{"name": "a"}', { 'content-encoding': 'identity' })).status).toBe(200);
});

const tooLarge = Buffer.alloc(LARGE_BODY_BYTES + 8 * 1024 * 1024, 0x20);
const chunked = Buffer.concat([
  Buffer.from(`${tooLarge.length.toString(16)}\r\n`),
  tooLarge,
  Buffer.from('\r\n0\r\n\r\n'),
]);
const GZIP = 'Content-Encoding: gzip';
const noGzip = Buffer.alloc(8 * 1024 * 1024, 0x20);
test.each([
  ['too large by its head', tooLarge, 413, [`Content-Length: ${tooLarge.length}`]],
  ['too large by its head before it unfolds', tooLarge, 413, [`Content-Length: ${tooLarge.length}`, GZIP]],
  ['too large as it comes', chunked, 413, ['Transfer-Encoding: chunked']],
  ['no gzip', noGzip, 400, [`Content-Length: ${noGzip.length}`, GZIP]],
  ['of no known form', noGzip, 415, [`Content-Length: ${noGzip.length}`, 'Content-Encoding: br']],
])('whoever writes all of a body before reading hears that it is %s', async (_, body, status, headers) => {
  for (const connection of ['keep-alive', 'close'])
    expect(
      await sendWholeThenRead(url, '/api/large', body, [...headers, `Connection: ${connection}`]),
      connection,
    ).toMatch(new RegExp(`^HTTP/1.1 ${status} `));
});
