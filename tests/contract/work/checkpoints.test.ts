import { expect, test } from 'vitest';
import { ANALYSIS_VERSION } from '../../../analysis/room/fold.ts';
import { replaceCheckpoints } from '../../../server/work/remembered/checkpoints.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { dayAt, newFleet } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });

const STRETCHES = 64;
/** The last event of each stretch of 32. */
const eventsOf = (stretch: number) => 32 * stretch + 31;

test('of checkpoints more than 128 events back every eighth stays once a room comes to another stretch', async () => {
  const { roomId } = await newFleet(service, await service.signIn());
  const { rows } = await service.pool.query('select account_id from rooms where id = $1', [roomId]);
  const accountId = rows[0].account_id;
  const stretches = Array.from({ length: STRETCHES }, (_, stretch) => stretch);
  await service.pool.query(
    `insert into room_checkpoints (account_id, room_id, at, events, analysis_version, state)
     select $1, $2, at, events, $3, '' from unnest($4::timestamptz[], $5::integer[]) as x (at, events)`,
    [accountId, roomId, ANALYSIS_VERSION, stretches.map(dayAt), stretches.map(eventsOf)],
  );
  const last = STRETCHES - 1;
  const saved = { at: new Date(dayAt(last)), events: eventsOf(last) };
  const from = {
    ...saved,
    saved,
    isRemembered: false,
    state: () => {
      throw new Error('It is not asked for.');
    },
  };
  const made = { at: new Date(dayAt(STRETCHES)), events: eventsOf(STRETCHES), state: '{}' };
  await replaceCheckpoints(service.db, [
    { room: { accountId, roomId }, folded: { from, checkpoints: [made] } },
  ]);
  const kept = await service.pool.query<{ events: number }>(
    'select events from room_checkpoints where room_id = $1 order by events',
    [roomId],
  );
  const isClose = (stretch: number) => eventsOf(stretch) >= made.events - 128;
  const stay = stretches.filter((stretch) => isClose(stretch) || stretch % 8 === 0);
  expect(kept.rows.map(({ events }) => events)).toEqual([...stay.map(eventsOf), made.events]);
});

test('of those that a room gone through from its beginning comes to, the same ones are kept', async () => {
  const { roomId } = await newFleet(service, await service.signIn());
  const { rows } = await service.pool.query('select account_id from rooms where id = $1', [roomId]);
  const accountId = rows[0].account_id;
  const checkpoints = Array.from({ length: 20 }, (_, stretch) => ({
    at: new Date(dayAt(stretch)),
    events: eventsOf(stretch),
    state: '{}',
  }));
  await replaceCheckpoints(service.db, [
    { room: { accountId, roomId }, folded: { from: null, checkpoints } },
  ]);
  const kept = await service.pool.query<{ events: number }>(
    'select events from room_checkpoints where room_id = $1 order by events',
    [roomId],
  );
  expect(kept.rows.map(({ events }) => events)).toEqual([0, 8, 15, 16, 17, 18, 19].map(eventsOf));
});
