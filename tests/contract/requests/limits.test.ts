import { once } from 'node:events';
import { connect } from 'node:net';
import { afterEach, describe, expect, test } from 'vitest';
import { buildApp } from '../../../server/app.ts';
import type { App } from '../../../server/appTypes.ts';
import type { Limits } from '../../../server/limits/limits.ts';
import { sendRequest } from '../../support/request.ts';
import type { TestService } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { readAnswer, type SlowSender, slowSender } from '../../support/slowSender.ts';
import { fleetOfTests, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

let limited: App | null = null;
afterEach(async () => {
  await limited?.close();
  limited = null;
});

/** Serves on the same database, with limits of its own. */
async function start(limits: Partial<Limits>): Promise<Pick<TestService, 'url' | 'request'>> {
  limited = await buildApp(service.app.database, { limits });
  const url = await limited.listen({ port: 0, host: '127.0.0.1' });
  return { url, request: (method, path, sent) => sendRequest(url, method, path, sent) };
}

const MEBIBYTE = 1024 * 1024;

describe('requests a minute', () => {
  test('are counted for each person and each logger by itself, and say what is left', async () => {
    const { request } = await start({ requestsPerMinute: 4 });
    const list = () => request('GET', '/coaches', { token: fleet.token });
    for (let i = 0; i < 3; i++) await list();
    const fourth = await list();
    expect(fourth.status).toBe(200);
    expect(fourth.headers.get('ratelimit-policy')).toBe('"requests";q=4;w=60');
    expect(fourth.headers.get('ratelimit')).toMatch(/^"requests";r=0;t=\d+$/);

    const fifth = await list();
    expect([fifth.status, fifth.body.type]).toEqual([429, '/problems/too-many-requests']);
    const seconds = Number(fifth.headers.get('retry-after'));
    expect(seconds).toBeGreaterThanOrEqual(1);
    expect(seconds).toBeLessThanOrEqual(60);

    const stranger = await service.newAccount();
    expect((await request('GET', '/coaches', { token: stranger.token })).status).toBe(200);
    const body = strokeBody(fleet.roomId, 1);
    for (let i = 0; i < 4; i++)
      expect((await request('POST', '/strokes', { token: fleet.loggerToken, body })).status).toBe(200);
    expect((await request('POST', '/strokes', { token: fleet.loggerToken, body })).status).toBe(429);
  });

  test('of a logger that empties its memory are not too many, hundreds at once', async () => {
    const { request } = await start({});
    const side = { side: 'front', rateHz: 10, amps: [0, 5, 5, 5, 0] };
    const answers = await Promise.all(
      Array.from({ length: 400 }, (_, i) => {
        const body = { ...strokeBody(fleet.roomId, i, 9, { sides: [side] }), key: `stored ${i}` };
        return request('POST', '/strokes', { token: fleet.loggerToken, body });
      }),
    );
    expect(new Set(answers.map(({ body }) => body.results?.[0].outcome))).toEqual(new Set(['stored']));
  });
});

/** Begins to send a stroke behind so much white space, which JSON allows; the last 1000 bytes are for `finish`. */
async function beginStroke(
  url: string,
  sender: string,
  bytes: number,
): Promise<SlowSender & { finish(): void }> {
  const text = JSON.stringify({ ...strokeBody(fleet.roomId, 0), key: crypto.randomUUID() }).padStart(bytes);
  const slow = await slowSender(
    url,
    'POST /api/v1/strokes HTTP/1.1',
    `authorization: Bearer ${sender}`,
    'content-type: application/json',
    `content-length: ${text.length}`,
    'connection: close',
    '',
  );
  slow.send(text.slice(0, -1000));
  return { ...slow, finish: () => slow.send(text.slice(-1000)) };
}

test('one sender has so many requests under way, and is told to come again', async () => {
  const { url } = await start({ requestsAtOnce: 2 });
  const begin = () => beginStroke(url, fleet.loggerToken, 50_000);
  const all = [await begin(), await begin(), await begin()];
  const first = readAnswer(await Promise.race(all.map(({ answer }) => answer)));
  expect(first.status).toBe(429);
  expect(first.head).toContain('retry-after: ');
  for (const one of all) one.finish();
  const statuses = (await Promise.all(all.map(({ answer }) => answer))).map(
    (text) => readAnswer(text).status,
  );
  expect(statuses.sort()).toEqual([200, 200, 429]);
});

describe('bodies that there is no room for', () => {
  test('wait for others to leave', async () => {
    const { url } = await start({ bodyBytes: MEBIBYTE });
    const first = await beginStroke(url, fleet.token, 2 * MEBIBYTE);
    const second = await beginStroke(url, fleet.loggerToken, 2 * MEBIBYTE);
    second.finish();
    first.finish();
    expect(readAnswer(await first.answer).status).toBe(200);
    expect(readAnswer(await second.answer).status).toBe(200);
  });

  test('are sent away where the others stay', async () => {
    const { url } = await start({ bodyBytes: MEBIBYTE, waitMs: 200 });
    const first = await beginStroke(url, fleet.token, 3 * MEBIBYTE);
    const second = await beginStroke(url, fleet.token, 3 * MEBIBYTE);
    const sentAway = await Promise.race([first, second].map(({ answer }) => answer));
    expect([readAnswer(sentAway).status, JSON.parse(readAnswer(sentAway).body).type]).toEqual([
      429,
      '/problems/too-many-requests',
    ]);
    expect(readAnswer(sentAway).head).toContain('retry-after: ');
    first.finish();
    second.finish();
    const statuses = [await first.answer, await second.answer].map((text) => readAnswer(text).status);
    expect(statuses.sort()).toEqual([200, 429]);
  });
});

describe('a slow sender', () => {
  test('of a body is answered 408, and cut off', async () => {
    const { url } = await start({ bodyWithinMs: 300, bodyBytesPerS: 1_000_000_000 });
    const sender = await beginStroke(url, fleet.loggerToken, 50_000);
    const { status, body } = readAnswer(await sender.answer);
    expect([status, JSON.parse(body).type]).toEqual([408, '/problems/request-timeout']);
  });

  test('that is as fast as it must be is waited for', async () => {
    const { url } = await start({ bodyWithinMs: 300, bodyBytesPerS: 1024 });
    // 49,000 bytes bought it 48 s; the first answer that comes is another's, after the 300 ms.
    const sender = await beginStroke(url, fleet.loggerToken, 50_000);
    const slower = await slowSender(
      url,
      'POST /api/v1/session HTTP/1.1',
      'content-type: application/json',
      'content-length: 100',
      '',
      '{',
    );
    expect(readAnswer(await Promise.race([sender.answer, slower.answer])).status).toBe(408);
    sender.finish();
    expect(readAnswer(await sender.answer).status).toBe(200);
  });

  test('that stops in the middle is given up, however much it had sent', async () => {
    const { url } = await start({ bodyStallMs: 300 });
    const sender = await beginStroke(url, fleet.loggerToken, 50_000);
    expect(readAnswer(await sender.answer).status).toBe(408);
  });

  test('may not take for ever, however much it sends', async () => {
    const { url } = await start({ bodyAtMostMs: 300, bodyBytesPerS: 1 });
    const sender = await beginStroke(url, fleet.loggerToken, 50_000);
    expect(readAnswer(await sender.answer).status).toBe(408);
  });

  test('of headers is answered 408, and cut off', async () => {
    const { url } = await start({ headersWithinMs: 300 });
    const sender = await slowSender(url, 'GET /healthz HTTP/1.1', 'x: 1');
    const { status, head, body } = readAnswer(await sender.answer);
    expect([status, JSON.parse(body).type]).toEqual([408, '/problems/request-timeout']);
    expect(head).toContain('content-type: application/problem+json');
  });
});

test('more connections than there may be are closed at once', async () => {
  const { url } = await start({ connections: 2 });
  const open = [await slowSender(url, 'GET / HTTP/1.1'), await slowSender(url, 'GET / HTTP/1.1')];
  const third = await slowSender(url, 'GET /healthz HTTP/1.1', '', '');
  expect(await third.answer).toBe('');
  open[0].send('connection: close\r\n\r\n');
  expect(readAnswer(await open[0].answer).status).toBe(200);
  open[1].end();
});

describe('large answers', () => {
  test('wait for each other, and one that nobody reads is given up', async () => {
    const { url, request } = await start({ answerBytes: MEBIBYTE, answerStallMs: 3_000 });
    // More than two sockets take in on the way, so that the service itself would have to keep it.
    const amps = Array.from({ length: 200_000 }, (_, i) => (i * 0.6180339887498949) % 30);
    const sides = ['front', 'rear'].map((side) => ({ side, rateHz: 5000, amps }));
    const supply = { rateHz: 5000, volts: amps };
    const body = strokeBody(fleet.roomId, 1, 9, { sides, supply });
    const [{ strokeId }] = (await request('POST', '/strokes', { token: fleet.token, body })).body.results;
    const path = `/strokes/${strokeId}/trace`;

    const { hostname, port } = new URL(url);
    const unread = connect(Number(port), hostname);
    unread.write(
      `GET /api/v1${path} HTTP/1.1\r\nhost: ${hostname}\r\nauthorization: Bearer ${fleet.token}\r\n\r\n`,
    );
    await once(unread, 'readable');
    const read = await Promise.all([1, 2].map(() => request('GET', path, { token: fleet.token })));
    for (const answer of read) expect([answer.status, answer.body]).toEqual([200, { sides, supply }]);

    let bytes = 0;
    unread.on('data', (chunk: Buffer) => {
      bytes += chunk.length;
    });
    unread.on('error', () => unread.destroy());
    await once(unread, 'close');
    expect(bytes).toBeGreaterThan(0);
    expect(bytes).toBeLessThan(JSON.stringify(read[0].body).length);
  });
});
