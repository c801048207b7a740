import { sendRequest } from '../support/request.ts';

/** Who a small data set belongs to: the service is to be started with them as its first person. */
export const KEEPER = { email: 'keeper@example.com', password: 'a long enough secret' };

const STROKES = 24;
const RATE_HZ = 10;
const DAY_MS = 86_400_000;

/** What a service said at the addresses of the data set, by address. */
export type Said = Record<string, object>;

/**
 * Fills an empty service, of whatever version, through the API that all versions have, and waits for its results: a
 * room that a side of begins to draw more, work done on it, a logger, a colleague who has not joined.
 */
export async function fillSmallDataSet(url: string): Promise<void> {
  const ask = await signedIn(url);
  const coach = await ask('POST', '/coaches', { name: 'Alder 7', model: 'Long Trailer', year: 2024 });
  const sides = ['front', 'rear'];
  const room = await ask('POST', `/coaches/${coach.id}/rooms`, {
    name: 'Den',
    drive: 'in-wall',
    sides,
    travelMetres: 0.9,
  });
  const logger = await ask('POST', `/coaches/${coach.id}/loggers`, { name: 'Board', sensor: 'clamp' });
  await ask('POST', '/people', { email: 'ines@example.com', name: 'Ines', role: 'technician' });
  await ask('POST', `/rooms/${room.id}/services`, {
    kind: 'cleaned',
    at: dayAt(3.5),
    notes: 'Soap and water.',
  });
  const strokes = Array.from({ length: STROKES }, (_, day) => strokeOf(room.id, day));
  await ask('POST', '/strokes', strokes, logger.token);
  for (let pending = -1; pending !== 0; ) {
    ({ pending } = await ask('GET', `/rooms/${room.id}/status`));
  }
}

/** Reads all of it. */
export async function readSmallDataSet(url: string): Promise<Said> {
  const ask = await signedIn(url);
  const said: Said = {};
  const read = async (path: string) => {
    said[path] = await ask('GET', path);
    return said[path] as { items: { id: string }[] };
  };
  await read('/people');
  for (const { id: coachId } of (await read('/coaches')).items) {
    await read(`/coaches/${coachId}/loggers`);
    for (const { id } of (await read(`/coaches/${coachId}/rooms`)).items) {
      await read(`/rooms/${id}/services`);
      await read(`/rooms/${id}/warnings?state=all`);
      for (const direction of ['extend', 'retract'])
        await read(`/rooms/${id}/trend?measure=runningAmps&direction=${direction}&side=front`);
      const strokes = await read(`/rooms/${id}/strokes?limit=500`);
      await read(`/strokes/${strokes.items[0].id}`);
      await read(`/strokes/${strokes.items[0].id}/trace`);
    }
  }
  return said;
}

type Ask = (method: string, path: string, body?: unknown, token?: string) => Promise<Record<string, never>>;

/** The token of who it belongs to. */
export async function signInAsKeeper(url: string): Promise<string> {
  const { body, text } = await sendRequest(url, 'POST', '/session', { body: KEEPER });
  if (body?.token === undefined) throw new Error(`Signing in was refused: ${text}`);
  return body.token;
}

async function signedIn(url: string): Promise<Ask> {
  const own = await signInAsKeeper(url);
  return async (method, path, body, token = own) => {
    const answer = await sendRequest(url, method, path, { body, token });
    if (answer.status >= 300) throw new Error(`${method} ${path}: ${answer.status} ${answer.text}`);
    return answer.body;
  };
}

const dayAt = (day: number) => new Date(Date.UTC(2026, 2, 1, 16) + day * DAY_MS).toISOString();

/** Even days extend. The front side draws a tenth more from the twentieth day on. */
function strokeOf(roomId: string, day: number) {
  const amps = (base: number) =>
    Array.from({ length: 12 * RATE_HZ }, (_, i) => ampsAt(i / RATE_HZ, base + 0.1 * ((day * 7 + i) % 5)));
  return {
    key: `day ${day}`,
    roomId,
    direction: day % 2 === 0 ? 'extend' : 'retract',
    startedAt: dayAt(day),
    ambientC: 15 + (day % 4),
    supply: { rateHz: 1, volts: Array(12).fill(12.5) },
    sides: [
      { side: 'front', rateHz: RATE_HZ, amps: amps(day < 20 ? 8.2 : 9.8) },
      { side: 'rear', rateHz: RATE_HZ, amps: amps(8.0) },
    ],
  };
}

/** Rest, inrush, running, end stop, rest; rounded as a logger of 10 mA sends it. */
function ampsAt(s: number, runningAmps: number): number {
  const amps =
    s < 1 || s > 11.4 ? 0.02 : s < 1.3 ? 3 * runningAmps : s > 10.6 ? 2 * runningAmps : runningAmps;
  return Math.round(amps * 100) / 100;
}
