import { afterEach, expect, test } from 'vitest';
import { startService, type TestService } from '../../support/service.ts';

const WANTED = { email: 'Mara@Example.com', name: 'Mara', password: 'a long enough secret' };
let service: TestService;
afterEach(() => service?.stop());

function setUp(body: object) {
  return service.request('POST', '/set-up', { body });
}

test('the link makes the first account, once, and signs in', async () => {
  service = await startService({ worker: false, firstPerson: false, setUpToken: 'the-secret' });
  expect((await setUp({ ...WANTED, token: 'not-the-secret' })).status).toBe(404);
  const made = await setUp({ ...WANTED, token: 'the-secret' });
  expect(made.status).toBe(201);
  expect(made.body.person).toMatchObject({ email: 'mara@example.com', name: 'Mara', role: 'dealer' });
  expect((await service.as(made.body.token, 'GET', '/coaches')).status).toBe(200);
  expect(made.headers.getSetCookie()).toHaveLength(1);
  expect((await setUp({ ...WANTED, email: 'second@example.com', token: 'the-secret' })).status).toBe(404);
  expect(await service.signIn('mara@example.com', WANTED.password)).toMatch(/^slp_/);
});

test('ten at once make one account', async () => {
  service = await startService({ worker: false, firstPerson: false, setUpToken: 'the-secret' });
  const answers = await Promise.all(
    Array.from({ length: 10 }, () => setUp({ ...WANTED, token: 'the-secret' })),
  );
  expect(answers.map((answer) => answer.status).sort()).toEqual([201, ...Array(9).fill(404)]);
});

test.each([
  ['/password', { password: 'eleven char' }],
  ['/password', { password: 'x'.repeat(201) }],
  ['/email', { email: 'not an address' }],
  ['/name', { name: '   ' }],
])('a set-up with a bad %s makes nobody', async (pointer, wrong) => {
  service = await startService({ worker: false, firstPerson: false, setUpToken: 'the-secret' });
  const refused = await setUp({ ...WANTED, token: 'the-secret', ...wrong });
  expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, pointer]);
  expect((await service.pool.query('select 1 from accounts')).rowCount).toBe(0);
});

test('there is no link where somebody is there already', async () => {
  service = await startService({ worker: false });
  expect((await setUp({ ...WANTED, token: '' })).status).toBe(422);
  expect((await setUp({ ...WANTED, token: 'null' })).status).toBe(404);
});
