import { setTimeout as pause } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { encode } from 'cbor2';
import { Random } from '../../server/demo/simulator/random.ts';
import { asTheyComeIn, makeRoom, type RoomThere, type SoakEvent, type SoakRoom } from './fleet.ts';
import { type Caller, insist } from './insist.ts';

/** What the service promised of one room. */
export interface Promised {
  readonly room: SoakRoom;
  readonly there: RoomThere;
  /** Ids of acknowledged strokes, by key. */
  readonly strokes: Map<string, string>;
  /** Ids of recorded services, by key. */
  readonly services: Map<string, string>;
}

export interface Sending {
  readonly promised: Promised[];
  /** Milliseconds to each acknowledgement, those that took more than one attempt included. */
  readonly ackMs: number[];
  readonly faults: string[];
}

const FORMS = ['json', 'gzip', 'cbor'] as const;
const MOST_AT_ONCE = 6;
const SENT_AGAIN = 0.1;

interface SendersParts {
  readonly person: Caller;
  readonly rooms: readonly SoakRoom[];
  readonly seed: number;
  readonly atOnce: number;
  /** Strokes a second of all of them. */
  readonly rate: number;
  readonly until: AbortSignal;
}

/**
 * Loggers at work until they are told to stop: each goes through the rooms that are left, keeps what it has until it is
 * acknowledged, sends some of it late and some of it twice; a person records the services.
 */
export async function runSenders(parts: SendersParts, sending: Sending): Promise<void> {
  const left = [...parts.rooms.entries()];
  const run = async (place: number): Promise<void> => {
    for (let next = left.shift(); next !== undefined && !parts.until.aborted; next = left.shift()) {
      const [i, room] = next;
      const promised = {
        room,
        there: await makeRoom(parts.person, room),
        strokes: new Map(),
        services: new Map(),
      };
      sending.promised.push(promised);
      await sendRoom(parts, sending, promised, new Random(parts.seed + 7919 * i + place));
    }
  };
  await Promise.all(Array.from({ length: parts.atOnce }, (_, place) => run(place)));
}

async function sendRoom(
  parts: SendersParts,
  sending: Sending,
  promised: Promised,
  random: Random,
): Promise<void> {
  let waiting: Extract<SoakEvent, { type: 'stroke' }>[] = [];
  for (const event of asTheyComeIn(promised.room, random.bits())) {
    if (parts.until.aborted) return;
    if (event.type === 'service') {
      await record(parts, promised, event);
      continue;
    }
    waiting.push(event);
    if (waiting.length <= random.integer(0, MOST_AT_ONCE - 1)) continue;
    await send(sending, parts, promised, waiting, random);
    if (random.chance(SENT_AGAIN)) await send(sending, parts, promised, waiting, random);
    await pause((1000 * parts.atOnce * waiting.length) / parts.rate, undefined, {
      signal: parts.until,
    }).catch(() => undefined);
    waiting = [];
  }
  if (waiting.length > 0) await send(sending, parts, promised, waiting, random);
}

async function record(
  { person }: SendersParts,
  { there, services }: Promised,
  { key, service }: Extract<SoakEvent, { type: 'service' }>,
): Promise<void> {
  const answer = await insist(person, 'POST', `/rooms/${there.roomId}/services`, {
    body: service,
    headers: { 'idempotency-key': key },
  });
  if (answer.status !== 201) throw new Error(`A service was answered with ${answer.status}: ${answer.text}`);
  services.set(key, answer.body.id);
}

/** Sends until it is acknowledged, and holds the answer against what was promised before. */
async function send(
  { ackMs, faults }: Sending,
  { person }: SendersParts,
  { there, strokes }: Promised,
  events: readonly Extract<SoakEvent, { type: 'stroke' }>[],
  random: Random,
): Promise<void> {
  const bodies = events.map(({ key, stroke }) => ({ ...stroke, key, roomId: there.roomId }));
  const form = FORMS[random.integer(0, FORMS.length - 1)];
  const started = performance.now();
  const answer = await insist({ url: person.url, token: there.loggerToken }, 'POST', '/strokes', {
    body: form === 'cbor' ? encode(bodies) : form === 'gzip' ? gzipSync(JSON.stringify(bodies)) : bodies,
    headers: {
      'content-type': form === 'cbor' ? 'application/cbor' : 'application/json',
      ...(form === 'gzip' ? { 'content-encoding': 'gzip' } : {}),
    },
  });
  ackMs.push(performance.now() - started);
  const results: { key: string; strokeId: string; outcome: string }[] = answer.body?.results ?? [];
  for (const [i, { key }] of events.entries()) {
    const result = results[i];
    if (result?.key !== key || !['stored', 'duplicate'].includes(result.outcome))
      throw new Error(`${key} was answered with ${answer.status}: ${answer.text.slice(0, 500)}`);
    const before = strokes.get(key);
    if (before !== undefined && (before !== result.strokeId || result.outcome !== 'duplicate'))
      faults.push(`${key} was acknowledged as ${before}, then as ${result.strokeId} (${result.outcome}).`);
    strokes.set(key, result.strokeId);
  }
}
