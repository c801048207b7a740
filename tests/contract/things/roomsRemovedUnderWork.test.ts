import { afterAll, beforeAll, expect, test } from 'vitest';
import { startService, type TestService } from '../../support/service.ts';
import { dayAt, newFleet, store, strokeBody } from '../strokes/strokeFixture.ts';

let service: TestService;
let token: string;

beforeAll(async () => {
  service = await startService();
  token = await service.signIn();
});
afterAll(() => service.stop());

const TIMES = 12;
const AT_ONCE = 8;

/** How often Postgres found transactions of this database to wait for each other in a ring. */
async function deadlocks(): Promise<number> {
  const { rows } = await service.pool.query(
    'select deadlocks from pg_stat_database where datname = current_database()',
  );
  return Number(rows[0].deadlocks);
}

test('a room can be removed while work is recorded in it and its strokes are gone through: none waits for another in a ring', async () => {
  for (let time = 0; time < TIMES; time++) {
    const fleet = await newFleet(service, token);
    const room = `/rooms/${fleet.roomId}`;
    await store(service, fleet, [strokeBody(fleet.roomId, 0), strokeBody(fleet.roomId, 1)]);
    const recorded = Array.from({ length: AT_ONCE }, (_, n) =>
      service.request('POST', `${room}/services`, { token, body: { kind: 'other', at: dayAt(n) } }),
    );
    const removed = service.request('DELETE', room, { token });
    for (const { status } of await Promise.all(recorded)) expect([201, 404]).toContain(status);
    expect((await removed).status).toBe(204);
  }
  expect(await deadlocks()).toBe(0);
});
