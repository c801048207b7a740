import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import { afterAll, expect, test } from 'vitest';
import type { Tables } from '../../../migrations/tables.ts';
import type { LogDetails } from '../../../server/work/inHand/analysisLog.ts';
import { StrokeInHand } from '../../../server/work/inHand/strokeInHand.ts';
import { OneByOne } from '../../../server/work/rounds/oneByOne.ts';

/** Where nobody listens: every room fails there at once. */
const pool = new pg.Pool({ host: '127.0.0.1', port: 1 });
const db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
afterAll(() => db.destroy());

const ROOM = {
  accountId: '0199aaaa-0000-7000-8000-000000000001',
  roomId: '0199aaaa-0000-7000-8000-000000000002',
};

test('a room that failed rests, is then looked at again, and rests twice as long once it fails anew', async () => {
  const told: LogDetails[] = [];
  const log = { error: (details: LogDetails) => void told.push(details) };
  const rooms = new OneByOne(db, log, new AbortController().signal, new StrokeInHand());
  /** How long it fails and rests, milliseconds: until somebody may look at it again. Failing takes next to nothing. */
  const restOnceFailed = async () => {
    const addedAt = performance.now();
    rooms.add(ROOM);
    expect(rooms.rooms()).toEqual([ROOM.roomId]);
    // Asked for twice while it waits it is done once.
    rooms.add(ROOM);
    await rooms.ended();
    expect(rooms.rooms()).toEqual([ROOM.roomId]);
    await expect.poll(() => rooms.rooms(), { interval: 10, timeout: 20_000 }).toEqual([]);
    return performance.now() - addedAt;
  };
  expect(await restOnceFailed()).toBeGreaterThan(900);
  expect(await restOnceFailed()).toBeGreaterThan(1900);
  expect(told.map(({ roomId }) => roomId)).toEqual([ROOM.roomId, ROOM.roomId]);
});

test('what is stopped is not begun, and rests from nothing', async () => {
  const told: LogDetails[] = [];
  const log = { error: (details: LogDetails) => void told.push(details) };
  const rooms = new OneByOne(db, log, AbortSignal.abort(), new StrokeInHand());
  rooms.add(ROOM);
  await rooms.ended();
  expect(rooms.rooms()).toEqual([]);
  expect(told).toEqual([]);
});
