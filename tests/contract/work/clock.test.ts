import { beforeEach, describe, expect, test } from 'vitest';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { readRoom } from '../results/roomAnswers.ts';
import {
  dayAt,
  type Fleet,
  newFleet,
  newService,
  send,
  settled,
  store,
  strokeBody,
} from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const dealer = dealerOfTests(service);
let fleet: Fleet;

beforeEach(async () => {
  fleet = await newFleet(service, dealer.token);
});

const HOUR_MS = 3_600_000;
const fromNow = (hours: number) => new Date(Date.now() + hours * HOUR_MS).toISOString();

async function sentAt(startedAt: string, key = startedAt) {
  const [id] = await store(service, fleet, [strokeBody(fleet.roomId, 0, 9, { key, startedAt })]);
  await settled(service, dealer.token, fleet.roomId);
  return read(id);
}

async function read(id: string) {
  return (await service.as(dealer.token, 'GET', `/strokes/${id}`)).body;
}

async function list() {
  return (await service.as(dealer.token, 'GET', `/rooms/${fleet.roomId}/strokes`)).body.items;
}

async function openWarnings() {
  return (await service.as(dealer.token, 'GET', `/rooms/${fleet.roomId}/warnings`)).body.items;
}

async function clockWarnings() {
  const { body } = await service.as(dealer.token, 'GET', `/rooms/${fleet.roomId}/warnings?state=all`);
  return body.items.filter(
    (w: { kind: string; evidence: { doubt?: string } }) => w.evidence.doubt === 'clock',
  );
}

async function setOffset(clockOffsetS: number) {
  const answer = await service.as(dealer.token, 'PATCH', `/loggers/${fleet.loggerId}`, { clockOffsetS });
  expect(answer.status, answer.text).toBe(200);
  expect(answer.body.clockOffsetS).toBe(clockOffsetS);
}

describe('a date that cannot be', () => {
  test.each([
    ['the start of 1970', '1970-01-01T00:03:11.000Z'],
    ['the last moment of 2014', '2014-12-31T23:59:59.999Z'],
    ['the first of all', '0001-01-01T00:00:00.000Z'],
    ['a day and an hour ahead', fromNow(25)],
    ['the last of all', '9999-12-31T23:59:59.999Z'],
  ])('%s: the stroke stands where it arrived, and the doubt is said', async (_, startedAt) => {
    const stroke = await sentAt(startedAt);
    expect(stroke).toMatchObject({ startedAt, placedBy: 'arrival', analysis: { status: 'done' } });
    expect(Date.parse(stroke.placedAt)).toBe(Date.parse(stroke.receivedAt));
    expect(stroke.analysis.doubts.map(({ doubt }: { doubt: string }) => doubt)).toContain('clock');
    const [warning] = await clockWarnings();
    expect(warning).toMatchObject({
      kind: 'sensor-doubt',
      state: 'open',
      openedAt: startedAt,
      placedAt: stroke.placedAt,
    });
    expect(warning.firstStrokeId).toBe(stroke.id);
    expect(warning.headline).toContain('The date of a stroke cannot be trusted');
    expect(warning.checks[0]).toContain('date and time of the logger');
  });

  test.each([
    ['the start of 2015', '2015-01-01T00:00:00.000Z'],
    ['23 hours ahead', fromNow(23)],
  ])('%s can be', async (_, startedAt) => {
    expect(await sentAt(startedAt)).toMatchObject({ startedAt, placedAt: startedAt, placedBy: 'sender' });
    expect(await clockWarnings()).toEqual([]);
  });

  test('the list, the trend and the last stroke go by the place', async () => {
    const future = await sentAt('2999-01-01T00:00:00.000Z');
    const later = await sentAt(fromNow(2));
    expect((await list()).map(({ id }: { id: string }) => id)).toEqual([later.id, future.id]);
    const question = `trend?measure=runningAmps&direction=extend&side=front&to=${fromNow(1)}`;
    const { body } = await service.as(dealer.token, 'GET', `/rooms/${fleet.roomId}/${question}`);
    expect(body.points.map(({ at }: { at: string }) => at)).toEqual([future.placedAt]);
    expect((await settled(service, dealer.token, fleet.roomId)).lastStrokeAt).toBe(later.startedAt);
  });

  test('sending it again moves nothing, and strokes of one message keep the order of their clock', async () => {
    const at = (second: number) => new Date(second * 1000).toISOString();
    const strokes = [3, 1, 2].map((n) => strokeBody(fleet.roomId, 0, 9, { key: `n ${n}`, startedAt: at(n) }));
    await store(service, fleet, strokes);
    const first = await list();
    expect(first.map(({ key }: { key: string }) => key)).toEqual(['n 3', 'n 2', 'n 1']);
    const again = await send(service, fleet.loggerToken, strokes.toReversed());
    expect(again.body.results.every((one: { outcome: string }) => one.outcome === 'duplicate')).toBe(true);
    const places = (items: { placedAt: string }[]) => items.map(({ placedAt }) => placedAt);
    expect(places(await list())).toEqual(places(first));
  });

  test('the warning clears once the clock is right for long enough', async () => {
    await sentAt('1970-01-01T00:00:09.000Z');
    for (let n = 0; n < 5; n++) await sentAt(fromNow(0.1 + n / 100));
    expect(await clockWarnings()).toMatchObject([{ state: 'cleared' }]);
  });
});

describe('an offset that a logger learns', () => {
  const DAYS = 24;
  const ampsOn = (day: number) => (day < 20 ? 9 : 13);
  const days = Array.from({ length: DAYS }, (_, day) => day);
  const bodies = (roomId: string, offsetS: number) =>
    days.map((day) =>
      strokeBody(roomId, day, ampsOn(day), {
        startedAt: new Date(Date.parse(dayAt(day)) - offsetS * 1000).toISOString(),
      }),
    );

  async function asSentRightly(): Promise<string> {
    const other = await newFleet(service, dealer.token);
    await newService(service, other, dayAt(10.5));
    await store(service, other, bodies(other.roomId, 0));
    return butForOpening(await readRoom(service, other));
  }

  /** A warning's opening is the time that its stroke was sent with (`placedAt` is where it belongs), and that differs here. */
  const butForOpening = (answers: string) =>
    answers.replaceAll(/"openedAt":"[^"]*"/g, '"openedAt":"as sent"');

  test.each([
    ['five weeks slow', 35 * 86_400.25],
    ['fast by a day and a half', -129_600],
    ['begins in 1970', Date.parse('2026-02-20T00:00:00Z') / 1000],
  ])('that %s: the results are as if sent rightly, before, during and after', async (_, offsetS) => {
    const strokes = bodies(fleet.roomId, offsetS);
    await newService(service, fleet, dayAt(10.5));
    await store(service, fleet, strokes.slice(12).toReversed());
    await settled(service, dealer.token, fleet.roomId);
    const late = strokes.slice(4, 12).map((stroke) => send(service, fleet.loggerToken, stroke));
    await Promise.all([...late, setOffset(offsetS)]);
    await store(service, fleet, strokes.slice(0, 4));
    const answers = await readRoom(service, fleet);
    expect(butForOpening(answers)).toBe(await asSentRightly());
    const [{ openedAt, firstStrokeId }] = await openWarnings();
    expect(openedAt).toBe((await read(firstStrokeId)).startedAt);
    for (const [i, stroke] of (await list()).entries()) {
      const day = DAYS - 1 - i;
      expect(stroke).toMatchObject({
        startedAt: strokes[day].startedAt,
        placedAt: dayAt(day),
        placedBy: 'sender',
      });
    }
  });

  test('is taken back', async () => {
    const strokes = bodies(fleet.roomId, 0);
    await newService(service, fleet, dayAt(10.5));
    await store(service, fleet, strokes);
    await setOffset(-86_400 * 3.7);
    await settled(service, dealer.token, fleet.roomId);
    await setOffset(0);
    expect(butForOpening(await readRoom(service, fleet))).toBe(await asSentRightly());
  });

  test('brings a date beyond what can be: then the arrival counts', async () => {
    const stroke = await sentAt(dayAt(1));
    await setOffset(4e9);
    expect(await read(stroke.id)).toMatchObject({ placedBy: 'arrival', startedAt: dayAt(1) });
  });

  test('leaves what a person corrected, and the strokes of others', async () => {
    const corrected = await sentAt(dayAt(1));
    const own = await sentAt(dayAt(2));
    const byPerson = await send(service, dealer.token, strokeBody(fleet.roomId, 3));
    const body = { startedAt: dayAt(7) };
    const answer = await service.as(dealer.token, 'PATCH', `/strokes/${corrected.id}`, body);
    expect(answer.body).toMatchObject({ startedAt: dayAt(7), placedAt: dayAt(7), placedBy: 'person' });
    await setOffset(86_400);
    expect((await read(corrected.id)).placedAt).toBe(dayAt(7));
    expect((await read(own.id)).placedAt).toBe(dayAt(3));
    expect((await read(byPerson.body.results[0].strokeId)).placedAt).toBe(dayAt(3));
  });

  test.each([['far'], [null], [6e9], [Number.MAX_VALUE]])('cannot be %s', async (clockOffsetS) => {
    const path = `/loggers/${fleet.loggerId}`;
    const answer = await service.as(dealer.token, 'PATCH', path, { clockOffsetS });
    expect(answer.status).toBe(422);
    expect(answer.body.errors[0].pointer).toBe('/clockOffsetS');
  });
});
