import { afterAll, beforeAll, expect, test } from 'vitest';
import { remeasureRoom } from '../../ingest/roomProgress.ts';
import { startService, type TestService } from '../support/service.ts';
import { readRoom } from './roomAnswers.ts';
import { dayAt, type Fleet, newFleet, newService, settled, store, strokeBody } from './strokeFixture.ts';

let service: TestService;
let token: string;

beforeAll(async () => {
  service = await startService();
  token = await service.signIn();
});
afterAll(() => service.stop());

const STROKES = 60;
/** A room that wears: the current rises from the thirtieth stroke on, and falls after the work on the fiftieth day. */
const ampsOn = (day: number) => (day < 30 || day > 50 ? 9 : 9 + (day - 29) * 0.35);
const days = Array.from({ length: STROKES }, (_, day) => day);

/** The same numbers for the same seed (a linear congruential generator, Numerical Recipes' constants). */
function shuffled(seed: number): number[] {
  let state = seed;
  const keyed = days.map((day) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return { day, order: state };
  });
  return keyed.sort((a, b) => a.order - b.order).map(({ day }) => day);
}

async function fill(order: readonly number[], batch: number, serviceAfter: number): Promise<Fleet> {
  const fleet = await newFleet(service, token);
  for (let i = 0; i < order.length; i += batch) {
    if (i <= serviceAfter && serviceAfter < i + batch) await newService(service, fleet, dayAt(50.5));
    await store(
      service,
      fleet,
      order.slice(i, i + batch).map((day) => strokeBody(fleet.roomId, day, ampsOn(day))),
    );
  }
  return fleet;
}

test('whatever the order of arrival, every answer is the same', async () => {
  const inOrder = await fill(days, 1, 50);
  const expected = await readRoom(service, inOrder);
  const [status, warnings] = JSON.parse(expected);
  expect(status.strokes).toBe(STROKES);
  expect(warnings.items.map((warning: { kind: string }) => warning.kind)).toContain('rising-draw');
  expect(await readRoom(service, await fill(shuffled(1), 1, 0))).toBe(expected);
  expect(await readRoom(service, await fill(shuffled(2), 7, 30))).toBe(expected);
  expect(await readRoom(service, await fill(days.toReversed(), 13, 59))).toBe(expected);
});

test('from scratch and little by little agree, to the last digit', async () => {
  const fleet = await newFleet(service, token);
  for (const day of days) {
    await store(service, fleet, [strokeBody(fleet.roomId, day, ampsOn(day))]);
    await settled(service, token, fleet.roomId);
  }
  const expected = await readRoom(service, fleet);
  const { rows } = await service.pool.query('select account_id from rooms where id = $1', [fleet.roomId]);
  await remeasureRoom(service.db, rows[0].account_id, fleet.roomId);
  expect(await readRoom(service, fleet)).toBe(expected);
});
