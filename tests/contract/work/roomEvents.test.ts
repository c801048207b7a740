import { expect, test } from 'vitest';
import { orderEvents } from '../../../analysis/room/fold.ts';
import { roomEvents } from '../../../server/work/reading/roomEvents.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { newFleet, newService } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });

/** Strokes are read so many at a time. */
const AT_A_TIME = 500;
const FIRST = Date.parse('2026-03-01T08:00:00.000Z');

/** The time of the nth stroke, from 1: the last of a reading and the first of the next share theirs. */
const atOf = (n: number) => new Date(FIRST + 1000 * (n > AT_A_TIME ? n - 1 : n)).toISOString();

test('work done in the very moment that ends a reading comes before the strokes of that moment, and once', async () => {
  const fleet = await newFleet(service, await service.signIn());
  const strokes = AT_A_TIME + 3;
  await service.pool.query(
    `insert into strokes (account_id, id, room_id, sender_id, logger_id, key, direction, started_at, placed_at,
       recorded_sides, has_supply, analysis)
     select r.account_id, ('00000000-0000-7000-8000-' || lpad(s.n::text, 12, '0'))::uuid, r.id, $2, $2, s.n::text,
       'extend', s.at, s.at, '{front}', false, '{"status": "unusable", "reason": "Nothing to go by."}'
     from rooms r, json_to_recordset($3::json) as s (n integer, at timestamptz) where r.id = $1`,
    [
      fleet.roomId,
      fleet.loggerId,
      JSON.stringify(Array.from({ length: strokes }, (_, i) => ({ n: i + 1, at: atOf(i + 1) }))),
    ],
  );
  for (const at of [atOf(AT_A_TIME), atOf(1), atOf(strokes)]) await newService(service, fleet, at);
  const { rows } = await service.pool.query<{ account_id: string }>(
    'select account_id from rooms where id = $1',
    [fleet.roomId],
  );
  const readings = [];
  for await (const reading of roomEvents(service.db, rows[0].account_id, fleet.roomId, null))
    readings.push(reading);
  expect(readings.map((reading) => reading.length)).toEqual([AT_A_TIME + 2, 4]);
  const events = readings.flat();
  expect(events).toEqual([...events].sort(orderEvents));
  const kinds = events.slice(AT_A_TIME - 1, AT_A_TIME + 4).map(({ type }) => type);
  expect(kinds).toEqual(['stroke', 'service', 'stroke', 'stroke', 'stroke']);
  // What lies behind a time is behind all of that time's events, and work of that time is not told again.
  const after = [];
  for await (const reading of roomEvents(
    service.db,
    rows[0].account_id,
    fleet.roomId,
    new Date(atOf(AT_A_TIME)),
  ))
    after.push(...reading);
  expect(after.map(({ type }) => type)).toEqual(['stroke', 'service', 'stroke']);
});
