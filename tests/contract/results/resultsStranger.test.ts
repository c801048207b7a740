import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests, newFleet, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const fleet = fleetOfTests(service);
let strokeId: string;
let warningId: string;
let stranger: string;

beforeAll(async () => {
  [strokeId] = await store(service, fleet, [strokeBody(fleet.roomId, 0)]);
  await settled(service, fleet.token, fleet.roomId);
  warningId = await insertWarning();
  stranger = (await service.newAccount()).token;
});

/** What the analysis would write, whatever it finds in this room. */
async function insertWarning(): Promise<string> {
  const id = randomUUID();
  await service.pool.query(
    `insert into warnings (account_id, id, room_id, kind, severity, opened_at, first_stroke_id, latest_stroke_id,
       headline, evidence, checks, cautions)
     select account_id, $1, id, 'stall-spike', 'watch', now(), $2, $2, 'Peaks', '{}', '["Look"]', '["Stand clear"]'
     from rooms where id = $3`,
    [id, strokeId, fleet.roomId],
  );
  return id;
}

const places: [string, string, () => string, object?][] = [
  ['the stroke', 'GET', () => `/strokes/${strokeId}`],
  ['its trace', 'GET', () => `/strokes/${strokeId}/trace`],
  ['the list', 'GET', () => `/rooms/${fleet.roomId}/strokes`],
  ['the trend', 'GET', () => `/rooms/${fleet.roomId}/trend?measure=runningAmps&direction=extend&side=front`],
  ['the status', 'GET', () => `/rooms/${fleet.roomId}/status`],
  ['the warnings', 'GET', () => `/rooms/${fleet.roomId}/warnings`],
  ['the comparison', 'GET', () => `/rooms/${fleet.roomId}/comparison?service=${randomUUID()}`],
  ['a change', 'PATCH', () => `/strokes/${strokeId}`, { excluded: true }],
  ['a removal', 'DELETE', () => `/strokes/${strokeId}`],
  ['an acknowledgement', 'POST', () => `/warnings/${warningId}/acknowledgement`, {}],
];

test.each(places)(
  '%s does not exist for a stranger, nor for a missing id',
  async (_name, method, path, body) => {
    const answer = await service.as(stranger, method, path(), body);
    expect(answer.status).toBe(404);
    const missing = path().replace(strokeId, randomUUID()).replace(fleet.roomId, randomUUID());
    const none = await service.as(stranger, method, missing.replace(warningId, randomUUID()), body);
    expect(none.text).toBe(answer.text);
  },
);

test.each(places)('%s asks for a signed-in person', async (_name, method, path, body) => {
  expect((await service.request(method, path(), { body })).status).toBe(401);
  expect((await service.as(fleet.loggerToken, method, path(), body)).status).toBe(401);
});

test('lists show a stranger nothing', async () => {
  for (const path of ['/warnings', '/overview']) {
    expect((await service.as(stranger, 'GET', path)).body).toEqual({ items: [], next: null });
  }
});

test('an owner reads and acknowledges, and changes no stroke', async () => {
  const dealer = await service.newAccount();
  const theirs = await newFleet(service, dealer.token);
  const [id] = await store(service, theirs, [strokeBody(theirs.roomId, 0)]);
  const { token } = await service.newMember(dealer, 'owner');
  expect((await service.as(token, 'GET', `/strokes/${id}`)).status).toBe(200);
  expect((await service.as(token, 'PATCH', `/strokes/${id}`, { excluded: true })).status).toBe(403);
  expect((await service.as(token, 'DELETE', `/strokes/${id}`)).status).toBe(403);
  expect((await service.as(token, 'DELETE', `/strokes/${strokeId}`)).status).toBe(404);
});

test('a warning is open, then acknowledged, by whom and with what note', async () => {
  const { token } = fleet;
  const list = async (state: string) => {
    const { body } = await service.as(token, 'GET', `/rooms/${fleet.roomId}/warnings?state=${state}`);
    return body.items.filter((item: { id: string }) => item.id === warningId);
  };
  expect(await list('open')).toHaveLength(1);
  expect(await list('acknowledged')).toHaveLength(0);
  const path = `/warnings/${warningId}/acknowledgement`;
  const answer = await service.as(token, 'POST', path, { note: 'Ordered a gear' });
  expect(answer.status).toBe(200);
  expect(answer.body).toMatchObject({
    id: warningId,
    roomId: fleet.roomId,
    state: 'acknowledged',
    acknowledgement: { by: 'Mara', note: 'Ordered a gear' },
  });
  expect(await list('open')).toHaveLength(0);
  expect(await list('acknowledged')).toHaveLength(1);
  const again = await service.as(token, 'POST', path);
  expect(again.body.acknowledgement).toEqual(answer.body.acknowledgement);
});
