import { expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests, send, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

const LAST_HEARD = '2026-05-02T16:20:11.000Z';
const seenAt = async () =>
  (await service.as(fleet.token, 'GET', `/loggers/${fleet.loggerId}`)).body.lastSeenAt;
const sendOne = async (day: number) =>
  (await send(service, fleet.loggerToken, strokeBody(fleet.roomId, day))).status;

test('a logger that is heard is noted, and waits for nobody who holds its row to be', async () => {
  await service.pool.query('update loggers set last_seen_at = $1 where id = $2', [
    LAST_HEARD,
    fleet.loggerId,
  ]);
  const holder = await service.pool.connect();
  try {
    await holder.query('begin');
    await holder.query('select from loggers where id = $1 for no key update', [fleet.loggerId]);
    expect(await sendOne(0)).toBe(200);
    expect(await seenAt()).toBe(LAST_HEARD);
    await holder.query('commit');
  } finally {
    holder.release();
  }
  expect(await sendOne(1)).toBe(200);
  expect(Date.parse(await seenAt())).toBeGreaterThan(Date.parse(LAST_HEARD));
});
