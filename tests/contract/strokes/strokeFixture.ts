import { beforeAll } from 'vitest';
import type { RoomStatus } from '../../../server/schemas/results.ts';
import { openFeed } from '../../support/liveFeed.ts';
import { onceMade } from '../../support/onceMade.ts';
import type { Answer } from '../../support/request.ts';
import type { TestService } from '../../support/service.ts';

/** Whatever takes requests: the service of a test, or one that runs as a process of its own. */
export type Asked = Pick<TestService, 'url' | 'request'>;

/** A coach with one room of two sides and one logger, made by whoever's token it is. */
export interface Fleet {
  readonly token: string;
  readonly coachId: string;
  readonly roomId: string;
  readonly loggerId: string;
  readonly loggerToken: string;
}

export async function newFleet(service: Asked, token: string): Promise<Fleet> {
  const coachId = await create(service, token, '/coaches', { name: 'Meadow Drift' });
  const roomId = await newRoom(service, token, coachId);
  const logger = await service.request('POST', `/coaches/${coachId}/loggers`, {
    token,
    body: { name: 'Board under the step', sensor: 'clamp' },
  });
  return { token, coachId, roomId, loggerId: logger.body.id, loggerToken: logger.body.token };
}

/** The fleet of the service's first person that the tests of a file share. */
export function fleetOfTests(service: TestService): Fleet {
  let fleet: Fleet | undefined;
  beforeAll(async () => {
    fleet = await newFleet(service, await service.signIn());
  });
  return onceMade(() => fleet);
}

export function newRoom(service: Asked, token: string, coachId: string): Promise<string> {
  const room = { name: 'Dinette', drive: 'in-wall', sides: ['front', 'rear'] };
  return create(service, token, `/coaches/${coachId}/rooms`, room);
}

export async function newService(service: Asked, fleet: Fleet, at: string): Promise<string> {
  return create(service, fleet.token, `/rooms/${fleet.roomId}/services`, { kind: 'lubricated', at });
}

async function create(service: Asked, token: string, path: string, body: object): Promise<string> {
  const answer = await service.request('POST', path, { token, body });
  if (answer.status !== 201) throw new Error(`${path} answered ${answer.status}: ${answer.text}`);
  return answer.body.id;
}

const RATE_HZ = 50;
const DAY_MS = 86_400_000;

/**
 * A stroke as a clamp sees it: rest, inrush, eight seconds of running with a little ripple, the end stop, rest.
 * `day` places it; odd days retract, even days extend.
 */
export function strokeBody(roomId: string, day: number, amps = 9, more: object = {}) {
  const side = (name: string, phase: number) => ({
    side: name,
    rateHz: RATE_HZ,
    amps: Array.from({ length: 10 * RATE_HZ }, (_, i) => current(i / RATE_HZ, amps, phase + day)),
  });
  return {
    key: `day ${day}`,
    roomId,
    direction: day % 2 === 0 ? 'extend' : 'retract',
    startedAt: dayAt(day),
    sides: [side('front', 0), side('rear', 1)],
    ...more,
  };
}

export function dayAt(day: number): string {
  return new Date(Date.UTC(2026, 2, 1, 9, 30) + day * DAY_MS).toISOString();
}

function current(seconds: number, amps: number, phase: number): number {
  const ripple = 0.15 * Math.sin(37 * seconds + phase) + 0.05 * Math.sin(211 * seconds + 3 * phase);
  if (seconds < 0.5 || seconds > 9.5) return round(ripple / 10);
  if (seconds < 0.7) return round(3 * amps * (1 - (seconds - 0.5) / 0.4));
  if (seconds > 9) return round(2.4 * amps + ripple);
  return round(amps + ripple);
}

function round(amps: number): number {
  return Math.round(amps * 1000) / 1000;
}

export function send(service: Asked, token: string, body: unknown): Promise<Answer> {
  return service.request('POST', '/strokes', { token, body });
}

/** Sends strokes as the fleet's logger and answers their ids; throws unless every one was stored. */
export async function store(service: Asked, fleet: Fleet, strokes: readonly object[]): Promise<string[]> {
  const answer = await send(service, fleet.loggerToken, strokes);
  const results: { outcome: string; strokeId: string }[] = answer.body.results ?? [];
  if (results.length !== strokes.length || results.some((result) => result.outcome !== 'stored')) {
    throw new Error(`Not stored: ${answer.text}`);
  }
  return results.map((result) => result.strokeId);
}

/** The room's status once nothing of it is pending. */
export function settled(service: Asked, token: string, roomId: string) {
  return statusOnce(service, token, roomId, ({ pending }) => pending === 0);
}

/**
 * The room's status as soon as this is so of it. The live feed says when to ask again: to ask all the while would take
 * a processor from the work that is waited for. The test's own time limit ends it.
 */
export async function statusOnce(
  service: Asked,
  token: string,
  roomId: string,
  isSo: (status: RoomStatus) => boolean,
) {
  for (;;) {
    const { status, text, body } = await service.request('GET', `/rooms/${roomId}/status`, { token });
    if (status !== 200) throw new Error(`The status answered ${status}: ${text}`);
    if (isSo(body)) return body;
    const feed = await openFeed(service.url, { authorization: `Bearer ${token}` });
    feed.say({ type: 'watch', roomId });
    try {
      while (!isSo((await feed.next('status')).status));
    } finally {
      feed.close();
    }
  }
}
