import { afterAll, beforeAll, expect, test } from 'vitest';
import { startService, type TestService } from '../support/service.ts';
import { dayAt, newFleet, newService, settled, store, strokeBody } from './strokeFixture.ts';

let service: TestService;
let token: string;

beforeAll(async () => {
  service = await startService();
  token = await service.signIn();
});
afterAll(() => service.stop());

const HEALTHY_STROKES = 30;
const STROKES_IN_TROUBLE = 12;
const STROKES_AFTER = 8;
/** Between the inrush and the end stop of `strokeBody`, in its samples. */
const [RUNS_FROM, RUNS_UNTIL] = [35, 450];

/** Runs heavier by a factor; inrush and end stop, which the winding alone decides, stay as they were. */
function stroke(roomId: string, day: number, factor: number) {
  const body = strokeBody(roomId, day);
  const sides = body.sides.map((side) => ({
    ...side,
    amps: side.amps.map((amps, i) => (i >= RUNS_FROM && i < RUNS_UNTIL ? amps * factor : amps)),
  }));
  return { ...body, sides };
}

test('a repair is held against the strokes in trouble, not against the healthy ones before them', async () => {
  const fleet = await newFleet(service, token);
  const repairedOn = HEALTHY_STROKES + STROKES_IN_TROUBLE;
  const factorOn = (day: number) => (day >= HEALTHY_STROKES && day < repairedOn ? 1.3 : 1);
  const days = Array.from({ length: repairedOn + STROKES_AFTER }, (_, day) => day);
  await store(
    service,
    fleet,
    days.map((day) => stroke(fleet.roomId, day, factorOn(day))),
  );
  const serviceId = await newService(service, fleet, dayAt(repairedOn - 0.5));
  await settled(service, token, fleet.roomId);
  const ask = (path: string) => service.request('GET', `/rooms/${fleet.roomId}/${path}`, { token });
  const raised = expect.objectContaining({ kind: 'rising-draw', state: 'cleared' });
  expect((await ask('warnings?state=all')).body.items).toContainEqual(raised);
  const { body } = await ask(`comparison?service=${serviceId}`);
  expect(body.sentence).toMatch(/draws 2[0-9] % less than before/);
  for (const { shifts, strokesBefore, strokesAfter } of body.groups) {
    const [running] = shifts;
    expect(running).toMatchObject({ measure: 'runningAmps', excludesZero: true });
    expect(running.after - running.before).toBeCloseTo(-2.7, 0);
    expect(strokesBefore).toBeLessThanOrEqual(STROKES_IN_TROUBLE / 2);
    expect(strokesAfter).toBe(STROKES_AFTER / 2);
  }
});
