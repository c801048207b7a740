import { beforeAll, expect, test } from 'vitest';
import { DEMO_SIGN_IN } from '../../../server/demo/demoSignIn.ts';
import { describeSignIn } from '../../../server/demo/describeSignIn.ts';
import { fillDemo } from '../../../server/demo/fillDemo.ts';
import { FIRST_PERSON, startService } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { settled } from '../strokes/strokeFixture.ts';

const NOW = new Date('2026-06-20T12:00:00Z');
const service = serviceOfTests({ firstPerson: false });
let filled: boolean[];

beforeAll(async () => {
  filled = await Promise.all([1, 2].map(() => fillDemo(service, NOW, FIRST_PERSON)));
});

test('an empty database is filled once, however many start at the same time', async () => {
  expect(filled.toSorted()).toEqual([false, true]);
  expect(await fillDemo(service, NOW, null)).toBe(false);
});

test.each([...DEMO_SIGN_IN.people])('$name can sign in as it is printed', async ({ email, role }) => {
  const printed = await describeSignIn(service, service.url);
  for (const said of [service.url, email, role, DEMO_SIGN_IN.password]) expect(printed).toContain(said);
  const token = await service.signIn(email, DEMO_SIGN_IN.password);
  const { body } = await service.as(token, 'GET', '/overview');
  expect(body.items).toHaveLength(6);
});

test.each([...DEMO_SIGN_IN.guests])('$name sees $coach alone, as its owner', async ({ email, coach }) => {
  expect(await describeSignIn(service, service.url)).toContain(email);
  const token = await service.signIn(email, DEMO_SIGN_IN.password);
  const { body } = await service.as(token, 'GET', '/overview');
  expect(body.items).toMatchObject([{ name: coach, role: 'owner' }]);
});

test('a person named for the first account has a place in the demo', async () => {
  const token = await service.signIn();
  expect((await service.as(token, 'GET', '/session')).body).toMatchObject({
    person: { role: 'dealer', email: FIRST_PERSON.email },
  });
});

test('a database with another account is left alone, and it is said', async () => {
  const other = await startService();
  try {
    expect(await fillDemo(other, NOW, null)).toBe(false);
    expect(await describeSignIn(other, other.url)).toContain('left out');
  } finally {
    await other.stop();
  }
});

/** Every warning ever raised, open unless it says `cleared`; in all other rooms there must be none. */
const STORIES: Record<string, { verdict: string; warnings: object[] }> = {
  'Stock 114, Living room': {
    verdict: 'service',
    warnings: [{ kind: 'rising-draw', side: 'front', state: 'open' }],
  },
  'Stock 131, Living room': {
    verdict: 'service',
    warnings: [{ kind: 'stall-spike', side: 'rear', pattern: 'same-place', state: 'open' }],
  },
  'Stock 131, Bedroom': {
    verdict: 'watch',
    warnings: [{ kind: 'rising-draw', side: 'rear', state: 'open' }],
  },
  'Stock 078, Kitchen': {
    verdict: 'service',
    warnings: [{ kind: 'stall-spike', side: 'main', pattern: 'once-per-turn', state: 'open' }],
  },
  'Stock 078, Bedroom': {
    verdict: 'service',
    warnings: [{ kind: 'uneven-sides', side: 'right', state: 'open' }],
  },
  'Stock 102, Living room': { verdict: 'clear', warnings: [{ kind: 'weak-supply', state: 'cleared' }] },
  'Stock 102, Bedroom': {
    verdict: 'clear',
    warnings: [{ kind: 'rising-draw', side: 'left', state: 'cleared' }],
  },
  'Stock 140, Lounge': { verdict: 'learning', warnings: [] },
};

test('every room ends with the verdict that its story deserves', async () => {
  const token = await service.signIn();
  const { body } = await service.as(token, 'GET', '/overview');
  const told: Record<string, object> = {};
  const expected: Record<string, object> = {};
  for (const coach of body.items) {
    for (const room of coach.rooms) {
      const name = `${coach.name}, ${room.name}`;
      const { verdict } = await settled(service, token, room.id);
      const path = `/rooms/${room.id}/warnings?state=all`;
      told[name] = { verdict, warnings: (await service.as(token, 'GET', path)).body.items };
      expected[name] = STORIES[name] ?? { verdict: 'clear', warnings: [] };
    }
  }
  expect(Object.keys(told)).toHaveLength(14);
  expect(told).toMatchObject(expected);
});
