import { beforeAll, describe, expect, test } from 'vitest';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
const dealer = dealerOfTests(service);
let coach: string;
let room: string;

beforeAll(async () => {
  coach = await create('/coaches', { name: 'Coach 0' });
  room = await create(`/coaches/${coach}/rooms`, { name: 'Room 0', drive: 'other', sides: ['main'] });
  for (let n = 1; n < 5; n++) await create('/coaches', { name: `Coach ${n}` });
  for (let n = 1; n < 5; n++)
    await create(`/coaches/${coach}/rooms`, { name: `Room ${n}`, drive: 'other', sides: ['main'] });
  for (let n = 0; n < 5; n++)
    await create(`/coaches/${coach}/loggers`, { name: `Logger ${n}`, sensor: 'shunt' });
  // Two at one moment: the order within it must hold from page to page as well.
  for (const day of ['05', '04', '04', '04', '01'])
    await create(`/rooms/${room}/services`, { kind: 'cleaned', at: `2026-04-${day}T08:00:00Z` });
  for (let n = 1; n < 5; n++) await service.signIn();
  const until = new Date(Date.now() + 86_400_000).toISOString();
  for (let n = 0; n < 5; n++) await create('/tokens', { name: `Script ${n}`, until });
  for (let n = 0; n < 5; n++) await create('/webhooks', { url: `https://example.com/news/${n}` });
});

async function create(path: string, body: object): Promise<string> {
  const made = await service.as(dealer.token, 'POST', path, body);
  expect(made.status, made.text).toBe(201);
  return made.body.id;
}

function read(path: string) {
  return service.as(dealer.token, 'GET', path);
}

const LISTS = [
  ['coaches', () => '/coaches'],
  ['rooms', () => `/coaches/${coach}/rooms`],
  ['loggers', () => `/coaches/${coach}/loggers`],
  ['services', () => `/rooms/${room}/services`],
  ['sessions', () => '/sessions'],
  ['tokens', () => '/tokens'],
  ['webhooks', () => '/webhooks'],
] as const;

test('a parameter without a value counts as left out, whatever the address', async () => {
  const paths = [
    `/rooms/${room}/strokes?direction=&from=&to=&limit=&cursor=`,
    `/rooms/${room}/warnings?state=&limit=&cursor=`,
    `/rooms/${room}/trend?measure=runningAmps&direction=extend&side=main&from=&to=`,
    '/warnings?state=&limit=&cursor=',
    '/coaches?limit=&cursor=',
    '/overview?q=&model=&verdict=&sort=&silent=&changed=&since=&limit=&cursor=',
    '/overview/summary?since=',
    `/rooms/${room}/services?limit=&limit=5`,
  ];
  for (const path of paths) {
    const answer = await read(path);
    expect([path, answer.status]).toEqual([path, 200]);
    expect(answer.body).toEqual((await read(path.replaceAll(/\w+=(?=&|$)/g, ''))).body);
  }
  const lacking = await read(`/rooms/${room}/trend?measure=&direction=extend&side=main`);
  expect([lacking.status, lacking.body.errors]).toEqual([
    422,
    [expect.objectContaining({ pointer: '/measure' })],
  ]);
});

test('a time in a query keeps the + of its offset, sent as it is', async () => {
  const csv = 'amps\n0\n5\n5.1\n0\n';
  const query = `roomId=${room}&key=plus&startedAt=2026-05-02T18:20:11+02:00&rateHz=4&direction=extend&columns=&side=`;
  const headers = { 'content-type': 'text/csv' };
  const sent = await service.request('POST', `/strokes?${query}`, {
    token: dealer.token,
    body: csv,
    headers,
  });
  expect(sent.body.results).toMatchObject([{ key: 'plus', outcome: 'stored' }]);
  const from = async (time: string) => {
    const { status, body } = await read(`/rooms/${room}/strokes?from=${time}`);
    return [status, body.items?.map(({ startedAt }: { startedAt: string }) => startedAt)];
  };
  const stroke = '2026-05-02T16:20:11.000Z';
  expect(await from('2026-05-02T18:20:11+02:00')).toEqual([200, [stroke]]);
  expect(await from('2026-05-02T18:20:11.5+02:00')).toEqual([200, []]);
  expect(await from('2026-05-02T12:20:11-04:00')).toEqual([200, [stroke]]);
  expect((await from('2026-05-02T18:20:11+02'))[0]).toBe(422);
});

describe.each(LISTS)('the list of %s', (_, path) => {
  test('comes in three pages as it comes in one', async () => {
    const pages = [await read(`${path()}?limit=2`)];
    for (let next = pages[0]?.body.next; next !== null; next = pages.at(-1)?.body.next)
      pages.push(await read(`${path()}?limit=2&cursor=${encodeURIComponent(next)}`));
    expect(pages.map((page) => page.body.items.length)).toEqual([2, 2, 1]);
    const whole = await read(path());
    expect(pages.flatMap((page) => page.body.items)).toEqual(whole.body.items);
    expect(whole.body.next).toBeNull();
  });

  test('ends without another page when it is just full', async () => {
    expect((await read(`${path()}?limit=5`)).body.next).toBeNull();
  });

  test.each([
    'limit=0',
    'limit=501',
    'limit=-1',
    'limit=1.5',
    'limit=many',
    'limit=0x10',
    'limit=%205',
    'limit=1e2',
    'limit=05',
    'limit=%2B5',
    'limit=5.0',
    'limit=1&limit=2',
  ])('refuses %s', async (query) => {
    const answer = await read(`${path()}?${query}`);
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/limit']);
  });

  test.each([
    ['rubbish', '%F0%9F%92%A9'],
    ['of no list', Buffer.from('["nothing",["x"]]').toString('base64url')],
    ['with a NUL', Buffer.from('["coaches",["\\u0000"]]').toString('base64url')],
    ['very long', 'a'.repeat(2000)],
  ])('refuses a cursor that is %s', async (_name, cursor) => {
    const answer = await read(`${path()}?cursor=${cursor}`);
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/cursor']);
  });
});

test('a cursor of one list is refused by another', async () => {
  const { next } = (await read('/coaches?limit=1')).body;
  for (const path of [
    `/coaches/${coach}/rooms`,
    `/rooms/${room}/services`,
    `/rooms/${room}/strokes`,
    '/warnings',
    '/overview',
  ])
    expect((await read(`${path}?cursor=${next}`)).status).toBe(422);
  const byName = (await read('/overview?sort=name&limit=1')).body;
  expect((await read(`/overview?sort=name&limit=1&cursor=${byName.next}`)).status).toBe(200);
  expect((await read(`/overview?sort=concern&limit=1&cursor=${byName.next}`)).status).toBe(422);
});

test('something created while a list is being read neither repeats nor hides another', async () => {
  const first = await read('/coaches?limit=3');
  const added = await create('/coaches', { name: 'Late' });
  const rest = await read(`/coaches?limit=500&cursor=${first.body.next}`);
  const ids = [...first.body.items, ...rest.body.items].map((item) => item.id);
  expect(ids.at(-1)).toBe(added);
  expect(new Set(ids).size).toBe(6);
});
