import { connect } from 'node:net';
import { gzipSync } from 'node:zlib';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { sendWholeThenRead } from '../../support/sendWholeThenRead.ts';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
const dealer = dealerOfTests(service);
let coach: string;
let room: string;
let before: string;

beforeAll(async () => {
  coach = (await send('POST', '/coaches', { name: 'Fern' })).body.id;
  const body = { name: 'Den', drive: 'in-wall', sides: ['front', 'rear'] };
  room = (await send('POST', `/coaches/${coach}/rooms`, body)).body.id;
});

function send(method: string, path: string, body?: unknown, headers: Record<string, string> = {}) {
  return service.request(method, path, { token: dealer.token, body, headers });
}

/** Everything that a refused request could have left behind. */
async function everything(): Promise<string> {
  const tables = ['coaches', 'rooms', 'loggers', 'services', 'strokes', 'idempotency_keys'];
  const queries = tables.map((table) => `select '${table}' as of, t::text as row from ${table} t`);
  const { rows } = await service.pool.query(`${queries.join(' union all ')} order by 1, 2`);
  return JSON.stringify(rows);
}
beforeEach(async () => {
  before = await everything();
});

const hoursAhead = (hours: number) => new Date(Date.now() + hours * 3_600_000).toISOString();
const ROOM = { name: 'Den', drive: 'in-wall', sides: ['front', 'rear'] };
const WORK = { kind: 'cleaned', at: '2026-04-02T10:00:00Z' };
const FIELDS: [string, string, () => string, unknown][] = [
  ['no name', '/name', () => '/coaches', {}],
  ['an empty name', '/name', () => '/coaches', { name: '' }],
  ['a blank name', '/name', () => '/coaches', { name: ' \t' }],
  ['a number for a name', '/name', () => '/coaches', { name: 1 }],
  ['null for a name', '/name', () => '/coaches', { name: null }],
  ['a name of 301 characters', '/name', () => '/coaches', { name: 'x'.repeat(301) }],
  ['half a character', '/name', () => '/coaches', '{"name": "\\ud83d"}'],
  ['a NUL', '/name', () => '/coaches', { name: 'a\u0000b' }],
  ['a NUL deep inside', '/sides/1', () => `/coaches/${coach}/rooms`, { ...ROOM, sides: ['a', 'b\u0000'] }],
  ['a year of 1e300', '/year', () => '/coaches', '{"name": "a", "year": 1e300}'],
  ['a year of 1e999', '/year', () => '/coaches', '{"name": "a", "year": 1e999}'],
  ['half a year', '/year', () => '/coaches', { name: 'a', year: 2020.5 }],
  ['an unknown field', '/colour', () => '/coaches', { name: 'a', colour: 'beige' }],
  ['an unknown field with a slash', '/a~1b~0c', () => '/coaches', { name: 'a', 'a/b~c': 1 }],
  ['an account of its choice', '/accountId', () => '/coaches', { name: 'a', accountId: crypto.randomUUID() }],
  ['an id of its choice', '/id', () => '/coaches', { name: 'a', id: crypto.randomUUID() }],
  ['no sides', '/sides', () => `/coaches/${coach}/rooms`, { ...ROOM, sides: [] }],
  ['nine sides', '/sides', () => `/coaches/${coach}/rooms`, { ...ROOM, sides: [...'abcdefghi'] }],
  ['one side twice', '/sides', () => `/coaches/${coach}/rooms`, { ...ROOM, sides: ['a', 'a'] }],
  ['an empty side', '/sides/1', () => `/coaches/${coach}/rooms`, { ...ROOM, sides: ['a', ''] }],
  ['an unknown drive', '/drive', () => `/coaches/${coach}/rooms`, { ...ROOM, drive: 'steam' }],
  ['no travel', '/travelMetres', () => `/coaches/${coach}/rooms`, { ...ROOM, travelMetres: 0 }],
  ['text for amperes', '/ratedAmps', () => `/coaches/${coach}/rooms`, { ...ROOM, ratedAmps: '14' }],
  ['half a tooth', '/gearTeeth', () => `/coaches/${coach}/rooms`, { ...ROOM, gearTeeth: 18.5 }],
  ['an unknown sensor', '/sensor', () => `/coaches/${coach}/loggers`, { name: 'a', sensor: 'ear' }],
  ['an unknown kind', '/kind', () => `/rooms/${room}/services`, { ...WORK, kind: 'painted' }],
  ['a day without a time', '/at', () => `/rooms/${room}/services`, { ...WORK, at: '2026-04-02' }],
  ['a time without a zone', '/at', () => `/rooms/${room}/services`, { ...WORK, at: '2026-04-02T10:00:00' }],
  ['a 30th of February', '/at', () => `/rooms/${room}/services`, { ...WORK, at: '2026-02-30T10:00:00Z' }],
  ['the year 0', '/at', () => `/rooms/${room}/services`, { ...WORK, at: '0000-01-01T00:00:00Z' }],
  [
    'a zone of 99 hours',
    '/at',
    () => `/rooms/${room}/services`,
    { ...WORK, at: '2026-04-02T10:00:00+99:00' },
  ],
  [
    'work of the last century',
    '/at',
    () => `/rooms/${room}/services`,
    { ...WORK, at: '1850-01-01T00:00:00Z' },
  ],
  ['work two days ahead', '/at', () => `/rooms/${room}/services`, { ...WORK, at: hoursAhead(48) }],
  ['a number for a time', '/at', () => `/rooms/${room}/services`, { ...WORK, at: 1_775_000_000 }],
  ["another room's side", '/side', () => `/rooms/${room}/services`, { ...WORK, side: 'main' }],
  [
    'notes of 10,001 characters',
    '/notes',
    () => `/rooms/${room}/services`,
    { ...WORK, notes: 'x'.repeat(10_001) },
  ],
  ['an array for a body', '', () => '/coaches', [{ name: 'a' }]],
  ['text for a body', '', () => '/coaches', '"a"'],
  ['null for a body', '', () => '/coaches', 'null'],
];

describe('a field at fault', () => {
  test.each(FIELDS)('%s is named as %o and changes nothing', async (_, pointer, path, body) => {
    const answer = await send('POST', path(), body);
    expect(answer.status, answer.text).toBe(422);
    expect(answer.headers.get('content-type')).toBe('application/problem+json');
    expect(answer.body).toMatchObject({ type: '/problems/invalid-field', status: 422 });
    expect(answer.body.errors[0]).toEqual({ pointer, detail: expect.stringMatching(/\S/) });
    expect(await everything()).toBe(before);
  });

  test.each([
    ['/coaches', { name: 'a', year: 2500 }, 'Must be at most 2100.'],
    ['/coaches', { name: 'a', year: 2020.5 }, 'Must be a whole number.'],
    ['/coaches', { name: '' }, 'Must not be empty.'],
    ['/coaches', {}, 'Is missing.'],
    [
      `/people`,
      { name: 'a', role: 'owner', email: 'a@' },
      'Must be an e-mail address, such as name@example.com.',
    ],
    [
      `/people`,
      { name: 'a', role: 'boss', email: 'a@example.com' },
      'Must be one of: dealer, technician, owner.',
    ],
    ['/password', { oldPassword: 'a', newPassword: 'short' }, 'Must have at least 12 characters.'],
  ])('%s with %j is told in a plain sentence', async (path, body, detail) => {
    const answer = await send(path === '/password' ? 'PUT' : 'POST', path, body);
    expect(answer.status).toBe(422);
    expect(answer.body.errors[0].detail).toBe(detail);
  });

  test('no body at all', async () => {
    expect((await send('POST', '/coaches')).status).toBe(422);
  });

  test('every field is named when several are at fault', async () => {
    const answer = await send('POST', '/coaches', { name: '', year: 'new', colour: 'beige' });
    const pointers = answer.body.errors.map((error: { pointer: string }) => error.pointer);
    expect(pointers.sort()).toEqual(['/colour', '/name', '/year']);
  });

  test('a patch may not empty what must be there', async () => {
    for (const body of [{ name: null }, { sides: null }, { positiveDirection: null }]) {
      const answer = await send('PATCH', `/rooms/${room}`, body);
      expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, `/${Object.keys(body)[0]}`]);
    }
    expect(await everything()).toBe(before);
  });
});

const BODIES: [string, number, string | Uint8Array, Record<string, string>][] = [
  ['broken JSON', 400, '{"name": ', {}],
  ['two documents', 400, '{"name": "a"} {"name": "b"}', {}],
  ['NaN', 400, '{"name": "a", "year": NaN}', {}],
  ['__proto__', 400, '{"name": "a", "__proto__": {"admin": true}}', {}],
  ['__proto__ in another spelling', 400, '{"name": "a", "\\u005f_proto__": {"admin": true}}', {}],
  ['constructor.prototype', 400, '{"name": "a", "constructor": {"prototype": {"admin": true}}}', {}],
  ['bytes that are not UTF-8', 400, Uint8Array.from([...Buffer.from('{"name": "'), 0xff, 0x22, 0x7d]), {}],
  ['ten thousand arrays in one another', 422, '['.repeat(10_000) + ']'.repeat(10_000), {}],
  ['more than a megabyte', 413, JSON.stringify({ name: 'x'.repeat(1024 * 1024) }), {}],
  ['plain text', 415, 'name=a', { 'content-type': 'text/plain' }],
  ['a form', 415, 'name=a', { 'content-type': 'application/x-www-form-urlencoded' }],
  ['an unknown content type', 415, '{"name": "a"}', { 'content-type': 'application/x-unknown' }],
  ['a broken content type', 415, '{"name": "a"}', { 'content-type': ';;;' }],
  ['gzip where it is not taken', 415, gzipSync('{"name": "a"}'), { 'content-encoding': 'gzip' }],
  ['an unknown compression', 415, '{"name": "a"}', { 'content-encoding': 'x-zoo' }],
];

describe('a body', () => {
  test.each(BODIES)('with %s answers %i and changes nothing', async (_, status, body, headers) => {
    const answer = await send('POST', '/coaches', body, headers);
    expect(answer.status, answer.text).toBe(status);
    expect(answer.body).toMatchObject({ type: expect.stringMatching(/^\/problems\//), status });
    expect(await everything()).toBe(before);
  });

  test('of nothing beside a content type does not hinder a DELETE', async () => {
    const id = (await send('POST', '/coaches', { name: 'Short-lived' })).body.id;
    const removed = await send('DELETE', `/coaches/${id}`, undefined, { 'content-type': 'application/json' });
    expect(removed.status).toBe(204);
  });

  test('in JSON may name its character set', async () => {
    const headers = { 'content-type': 'application/json; charset=utf-8' };
    expect((await send('POST', '/coaches', { name: 'Ö' }, headers)).body.name).toBe('Ö');
  });
});

test('who writes all of a body before reading hears that the token is missing, on a connection of one request too', async () => {
  const body = Buffer.alloc(8 * 1024 * 1024, 0x20);
  const headers = [`Content-Length: ${body.length}`, 'Connection: close'];
  expect(await sendWholeThenRead(service.url, '/api/v1/strokes', body, headers)).toMatch(/^HTTP\/1\.1 401 /);
});

describe('an address', () => {
  test.each([
    '/api/v1/nothing',
    '/api',
    '/api/',
    '/api/v1/coaches/a/b/c',
    '/api/v2/coaches',
    '/assets/none.js',
  ])('%s is 404', async (path) => {
    const answer = await send('GET', path);
    expect([answer.status, answer.body?.type]).toEqual([404, '/problems/not-found']);
  });

  test.each([
    ['PUT', '/coaches', 'GET, HEAD, OPTIONS, POST'],
    ['DELETE', '/coaches', 'GET, HEAD, OPTIONS, POST'],
    ['POST', `/coaches/${crypto.randomUUID()}`, 'DELETE, GET, HEAD, OPTIONS, PATCH'],
    ['POST', '/readyz', 'GET, HEAD, OPTIONS'],
  ])('%s %s is 405 and names the methods, which whoever asks is told', async (method, path, allow) => {
    const answer = await send(method, path);
    expect([answer.status, answer.headers.get('allow')]).toEqual([405, allow]);
    expect(answer.body.type).toBe('/problems/method-not-allowed');
    const asked = await service.request('OPTIONS', path);
    expect([asked.status, asked.headers.get('allow'), asked.text]).toEqual([204, allow, '']);
    expect(asked.headers.has('access-control-allow-origin')).toBe(false);
  });

  test('what could be done at an address that there is not is not told', async () => {
    expect((await service.request('OPTIONS', '/nothing')).status).toBe(404);
  });

  test.each([
    `/api/v1/coaches/${'x'.repeat(600)}`,
    '/api/v1/warnings/%00',
    '//api/v1/coaches',
    '/%00',
    '/healthz/',
  ])('%s names nothing', async (path) => {
    expect(await raw(`GET ${path} HTTP/1.1`, `authorization: Bearer ${dealer.token}`)).toMatch(
      /^HTTP\/1\.1 404/,
    );
  });

  test.each([
    '/api/v1//coaches',
    '/../../etc/passwd',
    '/assets/..%5c..',
    '/assets/%2e%2e/%2e%2e/etc',
    `/api/v1/${'a'.repeat(9000)}`,
  ])('%s is told of in words of ours', async (path) => {
    const said = await raw(`GET ${path} HTTP/1.1`, `authorization: Bearer ${dealer.token}`);
    expect(JSON.parse(said.slice(said.indexOf('{')))).toEqual({
      type: '/problems/not-found',
      title: 'There is no such thing',
      status: 404,
      detail: 'There is nothing at this address.',
    });
  });

  test.each([
    '/api/v1/coaches/%00',
    '/api/v1/coaches/%ff',
    '/api/v1/coaches/%',
    '/api/v1/coaches?limit=%00',
    '/api/v1/coaches?cursor=%ED%A0%80',
    '/api/v1/coaches?%ff=%ff',
    '/api/v1/coaches?__proto__=1&constructor=2',
    `/api/v1/coaches/${'x'.repeat(3000)}`,
    "/api/v1/coaches/'; drop table coaches; --",
    '/../../etc/passwd',
    '/assets/..%2f..%2fpackage.json',
    '/%2e%2e/%2e%2e/package.json',
    '/.env',
  ])('%s never fails the service nor leads outside', async (path) => {
    const text = await raw(
      `GET ${encodeURI(path).replaceAll('%25', '%')} HTTP/1.1`,
      `authorization: Bearer ${dealer.token}`,
    );
    expect(text).toMatch(/^HTTP\/1\.1 [24]/);
    expect(text).not.toContain('"dependencies"');
    expect(text).not.toContain('root:');
  });
});

describe('a request that HTTP itself does not allow', () => {
  test.each([
    ['a broken request line', 'GET'],
    ['a header too large', 'GET / HTTP/1.1', `x: ${'y'.repeat(17_000)}`],
    ['two lengths', 'POST /api/v1/session HTTP/1.1', 'content-length: 5', 'content-length: 6'],
    ['a negative length', 'POST /api/v1/session HTTP/1.1', 'content-length: -1'],
  ])('%s is answered with 4xx', async (_, ...lines) => {
    expect(await raw(...lines)).toMatch(/^HTTP\/1\.1 4/);
    expect((await service.request('GET', '/healthz')).status).toBe(200);
  });
});

describe('what Node answers by itself', () => {
  test.each([
    ['no Host', 400, 'malformed-request', ['GET /healthz HTTP/1.1', '', '']],
    ['no Host on a page', 400, 'malformed-request', ['GET / HTTP/1.1', '', '']],
    [
      'an unknown expectation',
      417,
      'expectation-failed',
      ['GET /healthz HTTP/1.1', 'host: a', 'expect: x', '', ''],
    ],
    ['a long address', 431, 'headers-too-large', [`GET /${'a'.repeat(100_000)} HTTP/1.1`, 'host: a', '', '']],
    [
      'a megabyte of it',
      431,
      'headers-too-large',
      [`GET /${'a'.repeat(1_000_000)} HTTP/1.1`, 'host: a', '', ''],
    ],
    ['a broken request line', 400, 'malformed-request', ['GET', '', '']],
  ])('%s is told as a problem, and can be read', async (_, status, problem, lines) => {
    const [head = '', body = ''] = (await sendLines(lines)).split('\r\n\r\n');
    expect(head).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `));
    expect(head.toLowerCase()).toContain('content-type: application/problem+json');
    expect(JSON.parse(body)).toMatchObject({ type: `/problems/${problem}`, status });
  });

  test('HTTP/1.0 needs no Host, and 100-continue is met', async () => {
    expect(await sendLines(['GET /healthz HTTP/1.0', '', ''])).toMatch(/^HTTP\/1\.1 200 /);
    const continued = await sendLines([
      'GET /healthz HTTP/1.1',
      'host: a',
      'expect: 100-continue',
      'connection: close',
      '',
      '',
    ]);
    expect(continued).toMatch(/^HTTP\/1\.1 100 Continue\r\n\r\nHTTP\/1\.1 200 /);
  });
});

/** Sends a request that `fetch` would put right, and answers all that comes back. */
function raw(...lines: string[]): Promise<string> {
  const { hostname } = new URL(service.url);
  return sendLines([...lines, `host: ${hostname}`, 'connection: close', '', '']);
}

/** Sends lines as they are. */
async function sendLines(lines: readonly string[]): Promise<string> {
  const { hostname, port } = new URL(service.url);
  const socket = connect(Number(port), hostname);
  socket.write(lines.join('\r\n'));
  let text = '';
  for await (const chunk of socket) text += chunk;
  return text;
}
