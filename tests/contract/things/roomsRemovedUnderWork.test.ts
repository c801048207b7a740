import { expect, test } from 'vitest';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { dayAt, newFleet, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const dealer = dealerOfTests(service);

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
    const fleet = await newFleet(service, dealer.token);
    const room = `/rooms/${fleet.roomId}`;
    await store(service, fleet, [strokeBody(fleet.roomId, 0), strokeBody(fleet.roomId, 1)]);
    const recorded = Array.from({ length: AT_ONCE }, (_, n) =>
      service.as(dealer.token, 'POST', `${room}/services`, { kind: 'other', at: dayAt(n) }),
    );
    const removed = service.as(dealer.token, 'DELETE', room);
    for (const { status } of await Promise.all(recorded)) expect([201, 404]).toContain(status);
    expect((await removed).status).toBe(204);
  }
  expect(await deadlocks()).toBe(0);
});
