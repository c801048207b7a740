import { describe, expect, test } from 'vitest';
import { decodeStroke } from '../../../ingest/json/stroke.ts';
import type { DemoScenario } from '../../../server/demo/demoScenario.ts';
import { tellScenario } from '../../../server/demo/tellScenario.ts';
import { CoachBody } from '../../../server/schemas/coach.ts';
import { LoggerBody } from '../../../server/schemas/logger.ts';
import { RoomBody } from '../../../server/schemas/room.ts';
import { ServiceBody } from '../../../server/schemas/service.ts';
import { Email, Password } from '../../../server/schemas/session.ts';

const ROOM_ID = '01890a5d-ac96-774b-bcce-b302099a8057';
const NOW = new Date('2026-05-02T10:00:00Z');
const scenario = tellScenario(NOW);
const rooms = scenario.coaches.flatMap((coach) => [...coach.rooms]);

describe('the demo scenario', () => {
  test('is accepted by the schemas that guard the service', () => {
    expect(Password.safeParse(scenario.password).success).toBe(true);
    for (const { email } of scenario.people) expect(Email.parse(email)).toMatch(/@example\.com$/);
    for (const { coach, logger } of scenario.coaches) {
      expect(CoachBody.parse(coach)).toEqual(coach);
      expect(LoggerBody.parse(logger)).toEqual(logger);
    }
    for (const { room, services } of rooms) {
      expect(RoomBody.parse(room)).toEqual(room);
      for (const service of services) expect(ServiceBody.parse(service)).toEqual(service);
    }
  });

  test('has rooms of every drive, and strokes in time order that end now', () => {
    expect(new Set(rooms.map(({ room }) => room.drive))).toEqual(
      new Set(['in-wall', 'through-frame', 'cable', 'other']),
    );
    for (const { strokes } of rooms) {
      const times = strokes.map((stroke) => Date.parse(stroke.startedAt));
      expect(times).toEqual(times.toSorted((one, other) => one - other));
      expect(times[times.length - 1]).toBeLessThan(NOW.getTime());
      expect(times[times.length - 1]).toBeGreaterThan(NOW.getTime() - 3 * 86_400_000);
    }
  });

  test('gives every stroke a key of its own, only sides of its room, and a body that the decoder accepts', () => {
    const keys = rooms.flatMap(({ strokes }) => strokes.map((stroke) => stroke.key));
    expect(new Set(keys).size).toBe(keys.length);
    for (const { room, strokes } of rooms) {
      for (const stroke of strokes) {
        for (const { side } of stroke.sides) expect(room.sides).toContain(side);
        expect(decodeStroke({ ...stroke, roomId: ROOM_ID }, '').key).toBe(stroke.key);
      }
    }
  });

  test('is the same for the same now', () => {
    // One coach: its rooms are made when they are come to. As text: number by number the runner takes ten times as long.
    const textOf = ({ coaches, ...rest }: DemoScenario) =>
      JSON.stringify([rest, coaches.slice(0, 1).map((coach) => ({ ...coach, rooms: [...coach.rooms] }))]);
    const text = textOf(scenario);
    expect(text.length).toBeGreaterThan(100_000);
    expect(textOf(tellScenario(NOW)) === text).toBe(true);
    expect(textOf(tellScenario(new Date(NOW.getTime() + 86_400_000))) === text).toBe(false);
  });
});
