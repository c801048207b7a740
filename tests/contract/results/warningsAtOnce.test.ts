import { v7 as newId } from 'uuid';
import { beforeAll, expect, test } from 'vitest';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { newFleet, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
let dealer: Member;

/** All that one stroke may raise in a room. */
const RAISED = [
  ['dropped-load', 'rear'],
  ['rising-draw', null],
  ['stall-spike', 'front'],
  ['stall-spike', 'rear'],
  ['uneven-sides', 'front'],
] as const;
const OPENED_AT = new Date('2026-05-02T16:20:11.250Z');
const ROOMS = 4;
const rooms: string[] = [];

beforeAll(async () => {
  dealer = await service.newAccount();
  for (let n = 0; n < ROOMS; n++) {
    const fleet = await newFleet(service, dealer.token);
    const [strokeId] = await store(service, fleet, [strokeBody(fleet.roomId, 0)]);
    rooms.push(fleet.roomId);
    // Turned round from room to room: neither when a row was written nor its id may tell.
    const written = RAISED.map((_, i) => RAISED[(i + n) % RAISED.length]);
    for (const [kind, side] of n % 2 === 0 ? written : written.reverse())
      await service.db
        .insertInto('warnings')
        .values({
          account_id: dealer.person.accountId,
          id: newId(),
          room_id: fleet.roomId,
          kind,
          side,
          severity: 'watch',
          opened_at: OPENED_AT,
          first_stroke_id: strokeId,
          latest_stroke_id: strokeId,
          headline: 'It draws more.',
          evidence: '{}',
          checks: '[]',
          cautions: '[]',
        })
        .execute();
  }
});

interface Listed {
  readonly id: string;
  readonly kind: string;
  readonly side: string | null;
}

async function pages(path: string, limit: number): Promise<Listed[]> {
  const found: Listed[] = [];
  for (let cursor = ''; ; ) {
    const { status, body, text } = await service.as(dealer.token, 'GET', `${path}?limit=${limit}${cursor}`);
    expect(status, text).toBe(200);
    found.push(...body.items);
    if (body.next === null) return found;
    cursor = `&cursor=${encodeURIComponent(body.next)}`;
  }
}

const named = (listed: readonly Listed[]) => listed.map(({ kind, side }) => `${kind} ${side}`);

test('what one stroke raised is in one order in every room, whatever its ids are', async () => {
  const lists = await Promise.all(rooms.map((roomId) => pages(`/rooms/${roomId}/warnings`, 500)));
  for (const list of lists) expect(named(list)).toEqual(named(lists[0]));
  expect(lists[0]).toHaveLength(RAISED.length);
});

test('page by page nothing of it is left out or comes twice', async () => {
  const whole = await pages('/warnings', 500);
  expect(whole).toHaveLength(ROOMS * RAISED.length);
  for (const limit of [1, 3, 7]) expect(await pages('/warnings', limit)).toEqual(whole);
  expect(new Set(whole.map(({ id }) => id)).size).toBe(whole.length);
});

test.each([
  ['a time and an id', [OPENED_AT.toISOString(), newId()]],
  ['a character that cannot be stored', [OPENED_AT.toISOString(), 'rising\0draw', newId()]],
])('a cursor of %s is none of this list', async (_, place) => {
  const cursor = Buffer.from(JSON.stringify(['warnings/all', place])).toString('base64url');
  const answer = await service.as(dealer.token, 'GET', `/warnings?cursor=${cursor}`);
  expect([answer.status, answer.body.errors?.[0].pointer]).toEqual([422, '/cursor']);
});
