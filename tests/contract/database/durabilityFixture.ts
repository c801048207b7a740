import { expect } from 'vitest';
import { sendRequest } from '../../support/request.ts';
import { type LoadSender, type SentStroke, StrokeLoad } from '../../support/strokeLoad.ts';
import { listStrokes, readRoom } from '../results/roomAnswers.ts';
import { type Asked, dayAt, type Fleet, newFleet, settled, strokeBody } from '../strokes/strokeFixture.ts';

/** Of the service, and as many of Postgres: it is asked for that durability be shown over no fewer. */
export const KILLS = 20;
/** Strokes sent around each kill, and how many of them are acknowledged before it. */
export const STROKES_A_KILL = 36;
export const ACKNOWLEDGED_BEFORE = 9;

export const ADMIN = { ADMIN_EMAIL: 'mara@example.com', ADMIN_PASSWORD: 'a long enough secret' };

const FORMS: readonly LoadSender['form'][] = ['json', 'batch', 'gzip', 'cbor'];
const EVERY_NTH_SAMPLE = 5;
/** However many a sender comes to send, none of them lies ahead of the machine's clock. */
const STROKES_A_DAY = 12;

/** A fifth of the usual stroke's samples, with digits down to the last bit of a double in every third. */
function smallStroke(roomId: string, n: number): SentStroke {
  const body = strokeBody(roomId, n, n < 60 ? 9 : 11, { startedAt: dayAt(n / STROKES_A_DAY) });
  const sides = body.sides.map(({ side, rateHz, amps }) => ({
    side,
    rateHz: rateHz / EVERY_NTH_SAMPLE,
    amps: amps
      .filter((_, i) => i % EVERY_NTH_SAMPLE === 0)
      // Plus nothing: JSON has no negative zero.
      .map((value, i) => value + (n % 3 === 0 ? i / 3e9 : 0)),
  }));
  return { ...body, sides };
}

export interface DurableLoad {
  readonly load: StrokeLoad;
  /** Everything that was promised is there, once, to the last digit, and the results are those of one quiet pass. */
  expectAllKept(service: Asked): Promise<void>;
}

/** Whom the service was started with. Answers the token. */
export async function signInAsAdmin(service: Asked): Promise<string> {
  const body = { email: ADMIN.ADMIN_EMAIL, password: ADMIN.ADMIN_PASSWORD };
  return (await service.request('POST', '/session', { body })).body.token;
}

/** Four senders, each with a room of its own and a form of its own. */
export async function startLoad(url: string, whereToSend: () => Promise<string>): Promise<DurableLoad> {
  const service = askedAt(url);
  const token = await signInAsAdmin(service);
  const fleets: Fleet[] = [];
  for (const _ of FORMS) fleets.push(await newFleet(service, token));
  const senders = fleets.map(({ loggerToken, roomId }, i) => ({
    loggerToken,
    form: FORMS[i],
    stroke: (n: number) => smallStroke(roomId, n),
  }));
  const load = new StrokeLoad(senders, whereToSend);
  return {
    load,
    expectAllKept: async (service) => {
      for (const [i, fleet] of fleets.entries()) {
        await settled(service, token, fleet.roomId);
        await expectStored(service, fleet, load.acknowledged[i]);
        await expectDuplicates(service, fleet, load.acknowledged[i]);
        expect(await readRoom(service, fleet)).toBe(
          await inOneQuietPass(service, token, load.acknowledged[i].size),
        );
      }
    },
  };
}

export function askedAt(url: string): Asked {
  return { url, request: (method, path, options) => sendRequest(url, method, path, options) };
}

async function expectStored(
  service: Asked,
  fleet: Fleet,
  acknowledged: ReadonlyMap<number, string>,
): Promise<void> {
  const listed = await listStrokes(service, fleet);
  expect(listed.map(({ id }) => id).sort()).toEqual([...acknowledged.values()].sort());
  for (const [n, id] of acknowledged) {
    const { sides, key } = smallStroke(fleet.roomId, n);
    expect(listed.find((stroke) => stroke.id === id)?.key).toBe(key);
    const trace = await service.request('GET', `/strokes/${id}/trace`, { token: fleet.token });
    expect(trace.body).toEqual({ sides });
  }
}

async function expectDuplicates(
  service: Asked,
  fleet: Fleet,
  acknowledged: ReadonlyMap<number, string>,
): Promise<void> {
  const all = [...acknowledged];
  for (let i = 0; i < all.length; i += 100) {
    const some = all.slice(i, i + 100);
    const body = some.map(([n]) => smallStroke(fleet.roomId, n));
    const answer = await service.request('POST', '/strokes', { token: fleet.loggerToken, body });
    expect(answer.body.results).toEqual(
      some.map(([n, strokeId]) => ({
        key: smallStroke(fleet.roomId, n).key,
        strokeId,
        outcome: 'duplicate',
      })),
    );
  }
}

/** What a room says that got the same strokes in order and in one piece. */
async function inOneQuietPass(service: Asked, token: string, strokes: number): Promise<string> {
  const fleet = await newFleet(service, token);
  for (let n = 0; n < strokes; n += 100) {
    const count = Math.min(100, strokes - n);
    const body = Array.from({ length: count }, (_, i) => smallStroke(fleet.roomId, n + i));
    const answer = await service.request('POST', '/strokes', { token: fleet.loggerToken, body });
    expect(answer.status, answer.text).toBe(200);
  }
  return readRoom(service, fleet);
}
