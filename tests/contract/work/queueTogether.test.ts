import pg from 'pg';
import { beforeEach, expect, test } from 'vitest';
import type { RoomKey } from '../../../server/database/roomChannel.ts';
import { Turns } from '../../../server/work/inHand/turns.ts';
import { foldEvents } from '../../../server/work/judging/foldHistory.ts';
import type { MeasureRow } from '../../../server/work/judging/measureRows.ts';
import { measureBatch } from '../../../server/work/measuring/measureBatch.ts';
import { eventsOfRooms } from '../../../server/work/reading/eventsOfRooms.ts';
import { readDirtyRooms } from '../../../server/work/reading/readDirtyRooms.ts';
import { readRoom } from '../../../server/work/reading/readRoom.ts';
import { roomEvents } from '../../../server/work/reading/roomEvents.ts';
import { RoomMemory } from '../../../server/work/remembered/roomMemory.ts';
import { analyseRoom } from '../../../server/work/rounds/analyseRoom.ts';
import { analyseRooms } from '../../../server/work/rounds/analyseRooms.ts';
import { whatStillHolds } from '../../../server/work/writing/whatStillHolds.ts';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';
import { dayAt, type Fleet, newFleet, newService, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const dealer = dealerOfTests(service);
let fleet: Fleet;
let key: RoomKey;

beforeEach(async () => {
  fleet = await newFleet(service, dealer.token);
  const { rows } = await service.pool.query('select account_id from rooms where id = $1', [fleet.roomId]);
  key = { accountId: rows[0].account_id, roomId: fleet.roomId };
});

const turns = () => new Turns(new AbortController().signal);
const strokesOn = (...days: number[]) => days.map((day) => strokeBody(fleet.roomId, day));
const together = (memory = new RoomMemory()) =>
  analyseRooms(service.db, [key], service.app.log, turns(), memory);

/** Reads the room's events, lets something happen, and asks what of them still holds. */
async function afterReading(meanwhile: () => Promise<unknown>) {
  const dirty = await readDirtyRooms(service.db, [key], new RoomMemory());
  await measureBatch(
    service.db,
    dirty.map(({ room }) => room),
    service.app.log,
    turns(),
  );
  const read = await eventsOfRooms(service.db, dirty, 50);
  expect(read).toHaveLength(1);
  await meanwhile();
  return service.db.transaction().execute((trx) => whatStillHolds(trx, read));
}

test('where nothing happened meanwhile the room is up to date', async () => {
  await store(service, fleet, strokesOn(1, 2));
  expect(await afterReading(async () => undefined)).toEqual([{ roomId: fleet.roomId, dirtyFrom: null }]);
});

test('strokes and services after the last event leave the rest to do', async () => {
  await store(service, fleet, strokesOn(1, 2));
  const still = await afterReading(async () => {
    await store(service, fleet, strokesOn(5, 4));
    await newService(service, fleet, dayAt(4.5));
  });
  expect(still).toEqual([{ roomId: fleet.roomId, dirtyFrom: new Date(dayAt(4)) }]);
});

test.each<[string, () => Promise<unknown>]>([
  ['a stroke between those that were read', () => store(service, fleet, strokesOn(2))],
  ['a stroke before them', () => store(service, fleet, strokesOn(0))],
  ['a service between them', () => newService(service, fleet, dayAt(1.5))],
  [
    'a stroke of them that is set aside',
    async () => {
      const { rows } = await service.pool.query('select id from strokes where room_id = $1', [fleet.roomId]);
      await service.as(dealer.token, 'PATCH', `/strokes/${rows[0].id}`, { excluded: true });
    },
  ],
  [
    'another description of the room',
    () => service.as(dealer.token, 'PATCH', `/rooms/${fleet.roomId}`, { ratedAmps: 7 }),
  ],
  ['the end of the room', () => service.as(dealer.token, 'DELETE', `/rooms/${fleet.roomId}`)],
])('%s lets nothing hold', async (_what, meanwhile) => {
  await store(service, fleet, strokesOn(1, 3));
  expect(await afterReading(meanwhile)).toEqual([]);
});

test('many strokes of one room are left for later, few are done', async () => {
  await store(service, fleet, strokesOn(...Array.from({ length: 51 }, (_, day) => day)));
  expect(await together()).toMatchObject([key]);
  const other = await newFleet(service, dealer.token);
  await store(service, other, [strokeBody(other.roomId, 0)]);
  expect(
    await analyseRooms(
      service.db,
      [{ ...key, roomId: other.roomId }],
      service.app.log,
      turns(),
      new RoomMemory(),
    ),
  ).toEqual([]);
});

const resultsOf = async (roomId: string) => {
  const { rows } = await service.pool.query(
    `select m.side, m.direction, m.placed_at, m.value, m.expected, m.adjusted, m.beyond, s.key, s.analysis,
       o.summary, o.limits, p.dirty_from
     from measures m join strokes s on s.account_id = m.account_id and s.id = m.stroke_id
     join room_progress p on p.account_id = m.account_id and p.room_id = m.room_id
     join room_results o on o.account_id = m.account_id and o.room_id = m.room_id
     where m.room_id = $1 order by m.side, m.placed_at`,
    [roomId],
  );
  return rows;
};

test('done together and done by itself, a room comes to the same results', async () => {
  const byItself = await newFleet(service, dealer.token);
  const days = Array.from({ length: 24 }, (_, day) => day);
  await store(
    service,
    fleet,
    days.map((day) => strokeBody(fleet.roomId, day)),
  );
  await store(
    service,
    byItself,
    days.map((day) => strokeBody(byItself.roomId, day)),
  );
  expect(await together()).toEqual([]);
  const room = { ...key, roomId: byItself.roomId };
  const { signal } = new AbortController();
  expect(await analyseRoom(service.db, room, service.app.log, signal)).toBe('done');
  const results = await resultsOf(fleet.roomId);
  expect(results).toHaveLength(48);
  expect(results.at(-1)?.expected.some((value: number | null) => value !== null)).toBe(true);
  expect(await resultsOf(byItself.roomId)).toEqual(results);
});

test('a room that is remembered goes on from there, and not from a checkpoint', async () => {
  const memory = new RoomMemory();
  await store(service, fleet, strokesOn(1, 2, 3));
  expect(await together(memory)).toEqual([]);
  await service.pool.query(`update room_checkpoints set state = '' where room_id = $1`, [fleet.roomId]);
  await store(service, fleet, strokesOn(4));
  expect(await together(memory)).toEqual([]);
  expect((await resultsOf(fleet.roomId)).at(-1)?.summary).toMatchObject({
    usableStrokes: { extend: 2, retract: 2 },
  });
});

test('whatever happens between two rounds, what is remembered leads to what the whole history says', async () => {
  const [one, other] = [new RoomMemory(), new RoomMemory()];
  const change = async (method: string, body?: object) => {
    const { rows } = await service.pool.query(
      'select id from strokes where room_id = $1 order by placed_at desc offset 3 limit 1',
      [fleet.roomId],
    );
    await service.as(dealer.token, method, `/strokes/${rows[0].id}`, body);
  };
  const rounds: [string, RoomMemory, () => Promise<unknown>][] = [
    [
      'a beginning',
      one,
      () => store(service, fleet, strokesOn(...Array.from({ length: 24 }, (_, day) => day))),
    ],
    ['on time', one, () => store(service, fleet, strokesOn(24, 25))],
    ['late', one, () => store(service, fleet, strokesOn(23.5))],
    ['another worker', other, () => store(service, fleet, strokesOn(26))],
    ['after another worker', one, () => store(service, fleet, strokesOn(27))],
    ['late, for another worker', other, () => store(service, fleet, strokesOn(25.5, 28))],
    ['after that', one, () => store(service, fleet, strokesOn(29))],
    ['over the end of a stretch', one, () => store(service, fleet, strokesOn(30, 31, 32, 33, 34))],
    ['work on the room', one, () => newService(service, fleet, dayAt(34.5))],
    ['after work', one, () => store(service, fleet, strokesOn(35, 36))],
    ['a stroke set aside', one, () => change('PATCH', { excluded: true })],
    ['a stroke gone', other, () => change('DELETE')],
    [
      'another room',
      one,
      () => service.as(dealer.token, 'PATCH', `/rooms/${fleet.roomId}`, { ratedAmps: 7 }),
    ],
    ['after all that', one, () => store(service, fleet, strokesOn(37, 38))],
  ];
  for (const [what, memory, happens] of rounds) {
    await happens();
    expect(await together(memory), what).toEqual([]);
    expect(await written(), what).toEqual(await ofTheWholeHistory());
  }
});

/** What is to be read of the fleet's room. */
async function written() {
  const { rows: measures } = await service.pool.query(
    `select side, direction, placed_at, stroke_id, value, expected, adjusted, beyond
     from measures where room_id = $1 order by placed_at, side`,
    [fleet.roomId],
  );
  const { rows } = await service.pool.query('select summary, limits from room_results where room_id = $1', [
    fleet.roomId,
  ]);
  return JSON.parse(JSON.stringify({ ...rows[0], measures: inSinglePrecision(measures) }));
}

/** The same, gone through from the beginning and written nowhere. */
async function ofTheWholeHistory() {
  const room = await readRoom(service.db, key.accountId, fleet.roomId);
  if (room === null) throw new Error('The room is gone.');
  const events = roomEvents(service.db, key.accountId, fleet.roomId, null);
  const { summary, limits, measures } = await foldEvents(room, { from: null, since: null }, events, turns());
  return JSON.parse(JSON.stringify({ summary, limits, measures: inSinglePrecision(measures) }));
}

/** What was foreseen is stored with seven digits. */
function inSinglePrecision(measures: readonly Pick<MeasureRow, 'expected' | 'adjusted'>[]) {
  const single = (values: MeasureRow['expected']) =>
    values.map((value) => (value === null ? null : Math.fround(value)));
  return measures.map((row) => ({ ...row, expected: single(row.expected), adjusted: single(row.adjusted) }));
}

test('a stroke that cannot be judged is left for later', async () => {
  const [id] = await store(service, fleet, strokesOn(0));
  await service.pool.query(
    `update strokes set analysis = '{"status": "done", "direction": "extend"}' where id = $1`,
    [id],
  );
  expect(await together()).toMatchObject([key]);
});

/** Lets the results of the fleet's room be written up to their last part, where they wait until `meanwhile` is over. */
async function whileWriting(meanwhile: () => Promise<unknown>): Promise<readonly RoomKey[]> {
  await store(service, fleet, strokesOn(1));
  expect(await together()).toEqual([]);
  await store(service, fleet, strokesOn(2));
  const other = new pg.Client(service.databaseUrl);
  await other.connect();
  try {
    await other.query('begin');
    await other.query('select from room_results where room_id = $1 for update', [fleet.roomId]);
    const writing = together();
    await untilSomebodyWaits(other);
    await meanwhile();
    await other.query('commit');
    return await writing;
  } finally {
    await other.end();
  }
}

const dirtyFrom = async () =>
  (await service.pool.query('select dirty_from from room_progress where room_id = $1', [fleet.roomId]))
    .rows[0].dirty_from;

test('no sender waits while results are being written, and what it sent is still to be done', async () => {
  expect(await whileWriting(() => store(service, fleet, strokesOn(3)))).toEqual([]);
  expect(await dirtyFrom()).toEqual(new Date(dayAt(3)));
});

test('results of a history that changes while they are written are taken back', async () => {
  const measured = () =>
    service.pool.query('select placed_at from measures where room_id = $1 order by 1', [fleet.roomId]);
  const left = await whileWriting(() => store(service, fleet, strokesOn(0)));
  expect(left).toMatchObject([key]);
  expect(await dirtyFrom()).toEqual(new Date(dayAt(0)));
  expect((await measured()).rows.map((row) => row.placed_at)).toEqual(Array(2).fill(new Date(dayAt(1))));
});

test('a stroke that is removed while results of it are written holds up no other room', async () => {
  const remove = async () => {
    const { rows } = await service.pool.query('select id from strokes where room_id = $1', [fleet.roomId]);
    // It waits for the results itself: whoever comes first, both come to an end.
    removing = service.as(dealer.token, 'DELETE', `/strokes/${rows[0].id}`);
  };
  let removing: Promise<{ status: number }> | null = null;
  await whileWriting(remove);
  expect(await removing).toMatchObject({ status: 204 });
});
