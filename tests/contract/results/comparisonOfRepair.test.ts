import { expect, test } from 'vitest';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { dayAt, newFleet, newService, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const dealer = dealerOfTests(service);

const HEALTHY_STROKES = 30;
const STROKES_IN_TROUBLE = 12;
const STROKES_AFTER = 8;
/** Between the inrush and the end stop of `strokeBody`, in its samples. */
const [RUNS_FROM, RUNS_UNTIL] = [35, 450];

/** Where something catches, in its samples. */
const [CAUGHT_FROM, CAUGHT_UNTIL] = [200, 230];

/** What `strokeBody` runs with, and what it stands still with. */
const [RUNNING_AMPS, STALL_AMPS] = [9, 21.6];

/**
 * Runs heavier by a factor, and so much slower: speed falls by R times the current, so that (stall - running current) x
 * time stays as it was. Inrush and end stop, which the winding alone decides, stay too.
 */
function stroke(roomId: string, day: number, factor: number) {
  const body = strokeBody(roomId, day);
  const slower = (STALL_AMPS - RUNNING_AMPS) / (STALL_AMPS - factor * RUNNING_AMPS);
  const sides = body.sides.map((side) => {
    const runs = side.amps.slice(RUNS_FROM, RUNS_UNTIL);
    const longer = Array.from({ length: Math.round(slower * runs.length) }, (_, i) => runs[i % runs.length]);
    const heavier = longer.map((amps) => Math.round(amps * factor * 1000) / 1000);
    return { ...side, amps: [...side.amps.slice(0, RUNS_FROM), ...heavier, ...side.amps.slice(RUNS_UNTIL)] };
  });
  return { ...body, sides };
}

test('a repair is held against the strokes in trouble, not against the healthy ones before them', async () => {
  const fleet = await newFleet(service, dealer.token);
  const repairedOn = HEALTHY_STROKES + STROKES_IN_TROUBLE;
  const factorOn = (day: number) => (day >= HEALTHY_STROKES && day < repairedOn ? 1.3 : 1);
  const days = Array.from({ length: repairedOn + STROKES_AFTER }, (_, day) => day);
  await store(
    service,
    fleet,
    days.map((day) => stroke(fleet.roomId, day, factorOn(day))),
  );
  const serviceId = await newService(service, fleet, dayAt(repairedOn - 0.5));
  await settled(service, dealer.token, fleet.roomId);
  const ask = (path: string) => service.as(dealer.token, 'GET', `/rooms/${fleet.roomId}/${path}`);
  const raised = expect.objectContaining({ kind: 'rising-draw', state: 'cleared' });
  expect((await ask('warnings?state=all')).body.items).toContainEqual(raised);
  const { body } = await ask(`comparison?service=${serviceId}`);
  expect(body.sentence).toMatch(/draws 2[0-9] % less than before/);
  expect(body.before).toMatchObject({ since: 'rising-draw', to: dayAt(repairedOn - 1) });
  expect(Date.parse(body.before.from)).toBeGreaterThan(Date.parse(dayAt(HEALTHY_STROKES)));
  expect(body.after).toEqual({
    from: dayAt(repairedOn),
    to: dayAt(repairedOn + STROKES_AFTER - 1),
    strokes: STROKES_AFTER,
    arose: null,
  });
  for (const { shifts, strokesBefore, strokesAfter } of body.groups) {
    const [running] = shifts;
    expect(running).toMatchObject({ measure: 'runningAmps', excludesZero: true });
    expect(running.after - running.before).toBeCloseTo(-2.7, 0);
    expect(strokesBefore).toBe(body.before.strokes / 2);
    expect(strokesBefore).toBeLessThanOrEqual(STROKES_IN_TROUBLE / 2);
    expect(strokesAfter).toBe(STROKES_AFTER / 2);
  }
});

test('less current on a side that lost its load after the work is told as no relief', async () => {
  const fleet = await newFleet(service, dealer.token);
  const lost = (day: number) => {
    const body = strokeBody(fleet.roomId, day);
    const [front, rear] = body.sides.map((side, place) => ({
      ...side,
      amps: side.amps.map((amps, at) =>
        at < RUNS_FROM || at >= RUNS_UNTIL ? amps : amps * (place === 0 ? 1.7 : 0.15),
      ),
    }));
    return { ...body, sides: [front, rear] };
  };
  const days = Array.from({ length: HEALTHY_STROKES + STROKES_IN_TROUBLE }, (_, day) => day);
  await store(
    service,
    fleet,
    days.map((day) => (day < HEALTHY_STROKES ? strokeBody(fleet.roomId, day) : lost(day))),
  );
  const serviceId = await newService(service, fleet, dayAt(HEALTHY_STROKES - 0.5));
  await settled(service, dealer.token, fleet.roomId);
  const { body } = await service.as(
    dealer.token,
    'GET',
    `/rooms/${fleet.roomId}/comparison?service=${serviceId}`,
  );
  expect(body.sentence).toMatch(/the rear side draws 8\d % less than before/);
  expect(body.sentence).toMatch(
    /Since then a side has run with hardly any load: that it draws less is no relief\.$/,
  );
  expect(body.after.arose).toBe('dropped-load');
});

test('one stroke out and one in before the work, and as many after it, are enough for an answer', async () => {
  const fleet = await newFleet(service, dealer.token);
  const strokes = [0, 1, 2, 3].map((day) => stroke(fleet.roomId, day, day < 2 ? 1.3 : 1));
  await store(service, fleet, strokes);
  const serviceId = await newService(service, fleet, dayAt(1.5));
  await settled(service, dealer.token, fleet.roomId);
  const { body } = await service.as(
    dealer.token,
    'GET',
    `/rooms/${fleet.roomId}/comparison?service=${serviceId}`,
  );
  expect(body.sentence).toMatch(/[Gg]oing out, .* draws 2\d % less than before .*; coming in, /);
  for (const { shifts, strokesBefore, strokesAfter } of body.groups) {
    expect([strokesBefore, strokesAfter]).toEqual([1, 1]);
    const [running] = shifts;
    expect(running.lower).toBeLessThan(running.shift);
    expect(running.upper).toBeGreaterThan(running.shift);
    expect(running.shift).toBeCloseTo(-2.7, 0);
  }
});

test('a place that was mended is told with two strokes a side, and that the whole is not told apart', async () => {
  const fleet = await newFleet(service, dealer.token);
  const caught = (day: number) => {
    const body = strokeBody(fleet.roomId, day);
    const sides = body.sides.map((side) => ({
      ...side,
      amps: side.amps.map((amps, at) => (at >= CAUGHT_FROM && at < CAUGHT_UNTIL ? amps + 6 : amps)),
    }));
    return { ...body, sides };
  };
  const days = [0, 1, 2, 3, 4, 5, 6, 7];
  await store(
    service,
    fleet,
    days.map((day) => (day < 4 ? caught(day) : strokeBody(fleet.roomId, day))),
  );
  const serviceId = await newService(service, fleet, dayAt(3.5));
  await settled(service, dealer.token, fleet.roomId);
  const { body } = await service.as(
    dealer.token,
    'GET',
    `/rooms/${fleet.roomId}/comparison?service=${serviceId}`,
  );
  expect(body.sentence).toMatch(/between \d+ % and \d+ % of the way out, .* A less than before, /i);
  expect(body.sentence).toMatch(/As a whole, the running current is not told apart from before\.$/);
  for (const { changedBins, strokesBefore, strokesAfter } of body.groups) {
    expect([strokesBefore, strokesAfter]).toEqual([2, 2]);
    expect(changedBins).toHaveLength(1);
    expect(changedBins[0].shiftAmps).toBeLessThan(-3);
    expect(changedBins[0].to - changedBins[0].from).toBeLessThan(0.15);
  }
});

test('strokes whose record says nothing are neither counted nor parted from the work', async () => {
  const fleet = await newFleet(service, dealer.token);
  const silent = (day: number) => {
    const body = strokeBody(fleet.roomId, day);
    return { ...body, sides: body.sides.map((side) => ({ ...side, amps: side.amps.map(() => 0) })) };
  };
  const sound = [0, 1, 2, 3, 6, 7, 8, 9].map((day) => strokeBody(fleet.roomId, day));
  await store(service, fleet, [...sound, silent(4), silent(5), silent(10)]);
  const serviceId = await newService(service, fleet, dayAt(4.5));
  await settled(service, dealer.token, fleet.roomId);
  const { body } = await service.as(
    dealer.token,
    'GET',
    `/rooms/${fleet.roomId}/comparison?service=${serviceId}`,
  );
  expect(body.before).toEqual({ from: dayAt(0), to: dayAt(3), strokes: 4, since: null });
  expect(body.after).toEqual({ from: dayAt(6), to: dayAt(9), strokes: 4, arose: null });
});
