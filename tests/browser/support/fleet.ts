import { vi } from 'vitest';
import { type Api, ask } from './api.ts';
import { type SideShape, strokeBody } from './strokeShape.ts';

interface WithId {
  readonly id: string;
}

const DAY_MS = 86_400_000;
const FIRST_STROKE_MS = Date.parse('2026-04-01T15:00:00Z');
const EXTEND_TO_RETRACT_MS = 2 * 3_600_000;

export async function addCoach(api: Api, name: string): Promise<WithId> {
  return ask<WithId>(api, 'POST', '/coaches', { name, model: 'Hallmoor 310', year: 2021 });
}

export async function addRoom(api: Api, coach: WithId, name: string): Promise<WithId> {
  return ask<WithId>(api, 'POST', `/coaches/${coach.id}/rooms`, {
    name,
    drive: 'in-wall',
    sides: ['front', 'rear'],
    travelMetres: 0.96,
    ratedAmps: 14,
  });
}

/** Sends one extend and one retract a day as the coach's own logger would, and answers the strokes' ids. */
export async function sendDays(
  api: Api,
  coach: WithId,
  room: WithId,
  shapeOf: (day: number) => readonly SideShape[],
  days: number,
): Promise<string[]> {
  const { token } = await ask<{ token: string }>(api, 'POST', `/coaches/${coach.id}/loggers`, {
    name: `Logger of ${room.id}`,
    sensor: 'clamp',
  });
  const strokes = Array.from({ length: days }, (_, day) => {
    const at = FIRST_STROKE_MS + day * DAY_MS;
    const sides = shapeOf(day);
    return [
      strokeBody(room.id, `${room.id}/${day}/extend`, new Date(at), 'extend', sides),
      strokeBody(room.id, `${room.id}/${day}/retract`, new Date(at + EXTEND_TO_RETRACT_MS), 'retract', sides),
    ];
  }).flat();
  const logger = { url: api.url, token };
  const answer = await ask<{ results: { strokeId: string; outcome: string }[] }>(
    logger,
    'POST',
    '/strokes',
    strokes,
  );
  const odd = answer.results.find((result) => result.outcome !== 'stored');
  if (odd !== undefined) throw new Error(`A stroke was not stored: ${JSON.stringify(odd)}`);
  return answer.results.map((result) => result.strokeId);
}

/** Waits until every stroke of the room has been worked out. */
export async function allAnalysed(api: Api, room: WithId): Promise<void> {
  await vi.waitFor(
    async () => {
      const { pending } = await ask<{ pending: number }>(api, 'GET', `/rooms/${room.id}/status`);
      if (pending > 0) throw new Error(`${pending} strokes are still pending`);
    },
    { timeout: 120_000, interval: 100 },
  );
}

export const HOSTILE_NAME =
  `<img src=x onerror="document.title='broken'"> & "quoted" ${'منزل متنقل '.repeat(20)}`.slice(0, 300).trim();

/** A fleet with something to see on every page. */
export interface Fleet {
  readonly coach: WithId;
  /** Ran evenly, then draws half as much again on its front side, with a spike at one place. */
  readonly worsening: WithId;
  readonly steady: WithId;
  readonly hostile: WithId;
  readonly hostileCoach: WithId;
  /** Of the worsening room, oldest first. */
  readonly strokeIds: readonly string[];
}

const HEALTHY_DAYS = 12;
const WORSE_DAYS = 10;

export async function addFleet(api: Api): Promise<Fleet> {
  const coach = await addCoach(api, 'Juniper 31');
  const worsening = await addRoom(api, coach, 'Bedroom');
  const steady = await addRoom(api, coach, 'Dinette');
  const odd = await addCoach(api, HOSTILE_NAME);
  const hostile = await addRoom(api, odd, HOSTILE_NAME);
  const even: SideShape[] = [
    { side: 'front', runningAmps: 8.5 },
    { side: 'rear', runningAmps: 8.2 },
  ];
  const worse: SideShape[] = [{ side: 'front', runningAmps: 12.8, spikeAt: 0.4 }, even[1]];
  const strokeIds = await sendDays(
    api,
    coach,
    worsening,
    (day) => (day < HEALTHY_DAYS ? even : worse),
    HEALTHY_DAYS + WORSE_DAYS,
  );
  await sendDays(api, coach, steady, () => even, HEALTHY_DAYS);
  await allAnalysed(api, worsening);
  await allAnalysed(api, steady);
  return { coach, worsening, steady, hostile, hostileCoach: odd, strokeIds };
}
