import { sendRequest } from '../../support/request.ts';
import { randomNumbers, syntheticMilliamps } from '../syntheticStroke.ts';

/** One coach as two years leave it, made through the service itself: what the others of the fleet are copied from. */
export interface ModelCoach {
  readonly url: string;
  readonly person: string;
  readonly coachId: string;
  readonly roomId: string;
  readonly serviceId: string;
  readonly strokeId: string;
  readonly verdict: string;
}

/** Two years of sixty strokes. */
export const STROKES = 120;
const ROOMS = ['Living room', 'Bedroom'];
const DAY_MS = 86_400_000;
const DAYS_BETWEEN = 6;
/** From here on the front side draws so much more that a warning is open. */
const WORSE_FROM = 100;

export async function makeModelCoach(url: string): Promise<ModelCoach> {
  const body = { email: 'bench@example.com', password: 'a long enough secret' };
  const { token: person } = (await sendRequest(url, 'POST', '/session', { body })).body;
  const create = async (path: string, thing: object) => {
    const answer = await sendRequest(url, 'POST', path, { token: person, body: thing });
    if (answer.status !== 201) throw new Error(`${path} answered ${answer.status}: ${answer.text}`);
    return answer.body;
  };
  const coach = await create('/coaches', { name: 'Stock', model: 'Heron 30', year: 2019 });
  const logger = await create(`/coaches/${coach.id}/loggers`, { name: 'Board', sensor: 'shunt' });
  const rooms: { id: string }[] = [];
  for (const name of ROOMS)
    rooms.push(
      await create(`/coaches/${coach.id}/rooms`, { name, drive: 'in-wall', sides: ['front', 'rear'] }),
    );
  const [first] = rooms;
  const sent: string[][] = [];
  for (const room of rooms) {
    const strokes = Array.from({ length: STROKES }, (_, n) => strokeOf(room.id, n));
    const answer = await sendRequest(url, 'POST', '/strokes', { token: logger.token, body: strokes });
    sent.push(answer.body.results.map((result: { strokeId: string }) => result.strokeId));
  }
  const service = await create(`/rooms/${first.id}/services`, { kind: 'lubricated', at: timeOf(50.5) });
  for (const room of rooms) await settled(url, person, room.id);
  return {
    url,
    person,
    coachId: coach.id,
    roomId: first.id,
    serviceId: service.id,
    // An extend stroke, with the warning that is open.
    strokeId: sent[0][STROKES - 2],
    verdict: (await sendRequest(url, 'GET', `/rooms/${first.id}/status`, { token: person })).body.verdict,
  };
}

/** The `n`th stroke of a room of the fleet; the same for all of them but for the room. */
export function strokeOf(roomId: string, n: number) {
  const random = randomNumbers(n);
  const side = (name: string, runningAmps: number) => ({
    side: name,
    rateHz: 125,
    amps: syntheticMilliamps(random, runningAmps).map((milliamps) => milliamps / 1000),
  });
  return {
    key: `${roomId} ${n}`,
    roomId,
    direction: n % 2 === 0 ? 'extend' : 'retract',
    startedAt: timeOf(n),
    sides: [side('front', n < WORSE_FROM ? 9 : 11.5), side('rear', 8.6)],
  };
}

function timeOf(n: number): string {
  return new Date(Date.now() - (STROKES + 20 - n) * DAYS_BETWEEN * DAY_MS).toISOString();
}

/** Waits until nothing of the room is pending. */
async function settled(url: string, token: string, roomId: string): Promise<void> {
  for (;;) {
    const { body } = await sendRequest(url, 'GET', `/rooms/${roomId}/status`, { token });
    if (body.pending === 0) return;
  }
}
