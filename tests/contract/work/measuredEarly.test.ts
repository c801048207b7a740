import { beforeEach, expect, test } from 'vitest';
import { decodeStroke } from '../../../ingest/json/stroke.ts';
import type { RoomRow } from '../../../ingest/measurer.ts';
import { prepareStroke, type Sender, storeStrokes } from '../../../ingest/storeStrokes.ts';
import { isOfThisAnalysis } from '../../../server/work/measuring/measuredBy.ts';
import { analyseRoom } from '../../../server/work/rounds/analyseRoom.ts';
import { startService } from '../../support/service.ts';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { readRoom } from '../results/roomAnswers.ts';
import { type Fleet, newFleet, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

const going = new AbortController().signal;

const service = serviceOfTests();
const dealer = dealerOfTests(service);
let fleet: Fleet;
let sender: Sender;

beforeEach(async () => {
  fleet = await newFleet(service, dealer.token);
  const { rows } = await service.pool.query('select account_id from rooms where id = $1', [fleet.roomId]);
  sender = {
    accountId: rows[0].account_id,
    senderId: fleet.loggerId,
    loggerId: fleet.loggerId,
    coachId: fleet.coachId,
  };
});

const NOTED = '{"status":"unusable","reason":"Measured early."}';

/** Stores one stroke with an analysis that tells itself apart; answers its id and what was told of the room. */
async function bring(day: number, measuredBy: string, analysis: string | null = NOTED) {
  const prepared = prepareStroke(sender, decodeStroke(strokeBody(fleet.roomId, day), ''));
  const told: { room: RoomRow; by: string }[] = [];
  const stroke = { ...prepared, brought: { measuredBy, analysis } };
  const [outcome] = await storeStrokes(service.pool, [stroke], (room, by) => told.push({ room, by }));
  if (outcome.outcome !== 'stored') throw new Error(`It is ${outcome.outcome}.`);
  return { strokeId: outcome.strokeId, told };
}

/** What the room's strokes are measured by, as whoever stores one without knowing is told. */
async function measuredBy(day: number): Promise<string> {
  const { told } = await bring(day, 'nothing known', null);
  await settled(service, dealer.token, fleet.roomId);
  return told[0].by;
}

async function analysisOf(strokeId: string) {
  await settled(service, dealer.token, fleet.roomId);
  return (await service.as(dealer.token, 'GET', `/strokes/${strokeId}`)).body.analysis;
}

beforeEach(async () => {
  await store(service, fleet, [strokeBody(fleet.roomId, 0)]);
  await settled(service, dealer.token, fleet.roomId);
});

test('whoever does not know the room is told of it, and who does is not', async () => {
  const { told } = await bring(1, 'nothing known', null);
  expect(told).toEqual([
    { room: expect.objectContaining({ id: fleet.roomId, sides: ['front', 'rear'] }), by: expect.any(String) },
  ]);
  expect(isOfThisAnalysis(told[0].by)).toBe(true);
  expect((await bring(2, told[0].by)).told).toEqual([]);
});

test('an analysis by what the room is now is taken as it comes', async () => {
  const by = await measuredBy(1);
  expect(await analysisOf((await bring(2, by)).strokeId)).toMatchObject(JSON.parse(NOTED));
});

test('an analysis by what the room was is made anew', async () => {
  const before = await measuredBy(1);
  await service.as(dealer.token, 'PATCH', `/rooms/${fleet.roomId}`, { travelMetres: 0.9 });
  const late = await bring(2, before);
  expect(await analysisOf(late.strokeId)).toMatchObject({ status: 'done' });
  const now = await measuredBy(3);
  expect(now).not.toBe(before);
  expect(await analysisOf((await bring(4, now)).strokeId)).toMatchObject(JSON.parse(NOTED));
});

test('strokes that are measured on arrival end in the same answers as those measured later', async () => {
  const without = await startService({ worker: false });
  try {
    const dealer = await without.signIn();
    const [early, later] = [await newFleet(without, dealer), await newFleet(without, dealer)];
    const upToDate = async (roomId: string) =>
      analyseRoom(without.db, { accountId: await accountOf(roomId), roomId }, without.app.log, going);
    const accountOf = async (roomId: string): Promise<string> =>
      (await without.pool.query('select account_id from rooms where id = $1', [roomId])).rows[0].account_id;
    const body = (fleet: Fleet, day: number) => strokeBody(fleet.roomId, day, 9 + day / 10);
    await store(without, early, [body(early, 0)]);
    await upToDate(early.roomId);
    let days = 1;
    // Until the thread that measures them has begun, and then some.
    for (let measured = 0; measured < 24; days++) {
      const [id] = await store(without, early, [body(early, days)]);
      const { rows } = await without.pool.query('select analysis from strokes where id = $1', [id]);
      if (rows[0].analysis !== null) measured++;
    }
    await store(
      without,
      later,
      Array.from({ length: days }, (_, day) => body(later, day)),
    );
    for (const { roomId } of [early, later]) await upToDate(roomId);
    expect(await readRoom(without, early)).toBe(await readRoom(without, later));
  } finally {
    await without.stop();
  }
});
