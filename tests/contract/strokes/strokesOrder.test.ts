import fc from 'fast-check';
import { expect, test } from 'vitest';
import { remeasureRoom } from '../../../ingest/roomProgress.ts';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { readRoom } from '../results/roomAnswers.ts';
import { newRoomOf, strokesOf } from '../work/lentFixture.ts';
import {
  dayAt,
  type Fleet,
  newFleet,
  newRoom,
  newService,
  send,
  settled,
  store,
  strokeBody,
} from './strokeFixture.ts';

const service = serviceOfTests();
const dealer = dealerOfTests(service);

const STROKES = 60;
/** A room that wears: the current rises from the thirtieth stroke on, and falls after the work on the fiftieth day. */
const ampsOn = (day: number) => (day < 30 || day > 50 ? 9 : 9 + (day - 29) * 0.35);
const days = Array.from({ length: STROKES }, (_, day) => day);

/** One model's lot: three coaches that learn their normal and lend it, and one with two rooms that come later. */
interface Lot {
  readonly rooms: readonly Fleet[];
}

const LENDING = [0, 1, 2];
const ARRIVING = [3, 4];
const LEARNT = 16;
const ARRIVES = 40;
const ARRIVED = 8;
const range = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i);

/** A stroke or a service of one of the lot's rooms. */
interface Act {
  readonly room: number;
  readonly day: number;
  readonly service: boolean;
}

const acts: readonly Act[] = [
  ...LENDING.flatMap((room) => range(0, LEARNT).map((day) => ({ room, day, service: false }))),
  { room: 0, day: 9.5, service: true },
  ...ARRIVING.flatMap((room) => range(ARRIVES, ARRIVED).map((day) => ({ room, day, service: false }))),
  { room: 3, day: ARRIVES + 6.5, service: true },
  { room: 4, day: ARRIVES + 4.5, service: true },
].sort((a, b) => a.day - b.day);

let lots = 0;
async function newLot(): Promise<Lot> {
  const model = `Lot ${lots++}`;
  // One after the other: rooms that learnt at one and the same time lend in the order of their ids.
  const coaches: Fleet[] = [];
  for (let i = 0; i <= LENDING.length; i++) coaches.push(await newRoomOf(service, dealer.token, { model }));
  const second = { ...coaches[3], roomId: await newRoom(service, dealer.token, coaches[3].coachId) };
  return { rooms: [...coaches, second] };
}

/** The first of the two that come later draws far more than its model on one side, the other one is healthy. */
function strokeOf({ rooms }: Lot, { room, day }: Act) {
  const [stroke] = strokesOf(rooms[room], day, 1, 9 + 0.1 * room, room === 3 ? { front: 1.7 } : {});
  return { ...stroke, key: `room ${room} day ${day}` };
}

/** Sends what one message holds: a request for each logger, all at once, and one for each service. */
async function tell(lot: Lot, told: readonly Act[]): Promise<void> {
  const loggers = new Map<string, object[]>();
  const answers: Promise<unknown>[] = [];
  for (const act of told) {
    const { loggerToken } = lot.rooms[act.room];
    if (act.service) answers.push(newService(service, lot.rooms[act.room], dayAt(act.day)));
    else loggers.set(loggerToken, [...(loggers.get(loggerToken) ?? []), strokeOf(lot, act)]);
  }
  for (const [loggerToken, strokes] of loggers) answers.push(send(service, loggerToken, strokes));
  await Promise.all(answers);
}

async function readLot(lot: Lot): Promise<string[]> {
  for (const { roomId } of lot.rooms) await settled(service, dealer.token, roomId);
  const answers = [];
  for (const room of [0, ...ARRIVING]) answers.push(await readRoom(service, lot.rooms[room]));
  return answers;
}

/** All acts in some order, some strokes once more, cut into messages. */
const way: fc.Arbitrary<Act[][]> = fc
  .tuple(
    fc.shuffledSubarray([...acts], { minLength: acts.length }),
    fc.array(fc.constantFrom(...acts.filter((act) => !act.service)), { maxLength: 12 }),
    fc.array(fc.integer({ min: 4, max: 30 }), { minLength: 1, maxLength: 5 }),
  )
  .map(([order, again, sizes]) => {
    const all = [...order, ...again];
    const messages: Act[][] = [];
    for (let i = 0; all.length > 0; i++) messages.push(all.splice(0, sizes[i % sizes.length]));
    return messages;
  });

test('in whatever order, batches and repetitions strokes and services of a whole lot come, every answer is the same', async () => {
  const inOrder = await newLot();
  await tell(inOrder, acts);
  const expected = await readLot(inOrder);
  const [status, warnings] = JSON.parse(expected[1]);
  // So few strokes are told anything by nobody but the rooms that lend.
  expect(status).toMatchObject({ strokes: ARRIVED, verdict: 'service' });
  expect(warnings.items.map((warning: { kind: string }) => warning.kind)).toEqual(['heavy-room']);
  await fc.assert(
    fc.asyncProperty(way, async (messages) => {
      const lot = await newLot();
      for (const told of messages) await tell(lot, told);
      expect(await readLot(lot)).toEqual(expected);
    }),
    { numRuns: 2, seed: 20_260_502 },
  );
});

test('from scratch and little by little agree, to the last digit', async () => {
  const fleet = await newFleet(service, dealer.token);
  for (const day of days) {
    await store(service, fleet, [strokeBody(fleet.roomId, day, ampsOn(day))]);
    await settled(service, dealer.token, fleet.roomId);
  }
  const expected = await readRoom(service, fleet);
  const { rows } = await service.pool.query('select account_id from rooms where id = $1', [fleet.roomId]);
  await remeasureRoom(service.db, rows[0].account_id, fleet.roomId);
  expect(await readRoom(service, fleet)).toBe(expected);
});
