import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { ROWS } from './accessRows.ts';
import { CALLERS, newPeople, newThings, type People, type Things, tokenFor } from './accessWorld.ts';

const service = serviceOfTests({ worker: false });
let people: People;

beforeAll(async () => {
  people = await newPeople(service);
});

/** What stands in the address where the route has a name; HEAD is answered as its GET. */
const NAMED: Readonly<Record<string, keyof Things>> = {
  coaches: 'coach',
  rooms: 'room',
  loggers: 'logger',
  strokes: 'stroke',
  services: 'service',
  warnings: 'warning',
  grants: 'grant',
  people: 'person',
  sessions: 'session',
  invitations: 'invitation',
  webhooks: 'webhook',
};

function addressOf(url: string, things: Things): string {
  return url.replace(/(\w+)\/:\w+/, (_, thing: string) => {
    const name = NAMED[thing];
    return `${thing}/${name === undefined ? 'not-found' : things[name]}`;
  });
}

test('every route has a row, and every row a route', () => {
  const routes = [...service.app.knownRoutes].flatMap(([url, { methods }]) =>
    [...methods].filter((method) => method !== 'HEAD').map((method) => `${method} ${url}`),
  );
  expect(Object.keys(ROWS).sort()).toEqual(routes.sort());
});

describe.each(Object.entries(ROWS))('%s', (route, { answers, query = '', type, body, shows }) => {
  const [method, url] = route.split(' ');
  let shared: Things | null = null;
  const end = async () => {
    await shared?.remove();
    shared = null;
  };
  afterAll(end);

  test.each(CALLERS)('answers %s as it should', async (caller) => {
    shared ??= await newThings(service, people);
    const things = shared;
    const token = await tokenFor(service, people, things, caller);
    const headers = type === undefined ? undefined : { 'content-type': type };
    const sent = { token, body: body?.(things, people, caller), headers };
    const answer = await service.request(method, addressOf(url, things) + query, sent);
    // Whoever was let in may have changed them. Who was refused has not: else the next one would find it.
    if (method !== 'GET' && answer.status < 400) await end();
    expect([answer.status, answer.text.slice(0, 300)]).toEqual([answers[caller], expect.anything()]);
    if (answer.status >= 400) expect(answer.text).not.toContain(things.name);
    if (shows !== undefined) expect(answer.text.includes(shows.text(things))).toBe(shows.to.includes(caller));
  });
});
