import { setTimeout as pause } from 'node:timers/promises';
import { sendRequest } from '../support/request.ts';

/** A running service, and a person in it who may create coaches. */
export interface RigService {
  readonly url: string;
  readonly token: string;
}

/** A room of the service with a logger that sends to it. */
export interface RigRoom {
  readonly roomId: string;
  readonly loggerToken: string;
}

const ASK_AGAIN_MS = 100;

/** One request; anything but success is an error that says what was answered. */
export async function ask<Answer>(
  { url, token }: RigService,
  method: string,
  path: string,
  body?: unknown,
): Promise<Answer> {
  const answer = await sendRequest(url, method, path, { token, body });
  if (answer.status >= 300) throw new Error(`${method} ${path} answered ${answer.status}: ${answer.text}`);
  return answer.body;
}

/** Signs in, and answers how to call as that person. */
export async function signIn(url: string, email: string, password: string): Promise<RigService> {
  const { token } = await ask<{ token: string }>({ url, token: '' }, 'POST', '/session', { email, password });
  return { url, token };
}

/** One more room of the rig's coach; each has its own load, so its own normal. */
export async function addRoom(service: RigService, coachId: string, loadKgf: number): Promise<RigRoom> {
  const room = await ask<{ id: string }>(service, 'POST', `/coaches/${coachId}/rooms`, {
    name: `Rig under ${loadKgf} kgf`,
    drive: 'other',
    sides: ['main'],
    travelMetres: 0.12,
  });
  const logger = await ask<{ token: string }>(service, 'POST', `/coaches/${coachId}/loggers`, {
    name: `Hall sensor, ${loadKgf} kgf`,
    sensor: 'clamp',
  });
  return { roomId: room.id, loggerToken: logger.token };
}

/** Sends strokes as the room's logger and answers their ids, in the order sent. */
export async function send(
  { url }: RigService,
  room: RigRoom,
  strokes: readonly object[],
): Promise<readonly string[]> {
  const { results } = await ask<{ results: { strokeId: string; outcome: string }[] }>(
    { url, token: room.loggerToken },
    'POST',
    '/strokes',
    strokes.map((stroke) => ({ ...stroke, roomId: room.roomId })),
  );
  const odd = results.find(({ outcome }) => outcome !== 'stored');
  if (odd !== undefined) throw new Error(`A stroke was not stored: ${JSON.stringify(odd)}`);
  return results.map(({ strokeId }) => strokeId);
}

/** Waits until every stroke of the room has been analysed. */
export async function allAnalysed(service: RigService, { roomId }: RigRoom): Promise<void> {
  for (;;) {
    const { pending } = await ask<{ pending: number }>(service, 'GET', `/rooms/${roomId}/status`);
    if (pending === 0) return;
    await pause(ASK_AGAIN_MS);
  }
}
