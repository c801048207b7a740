import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { encode } from 'cbor2';
import { decode } from 'cbor2/decoder';
import { connectAsync, type MqttClient } from 'mqtt';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openDatabase } from '../../../server/database/openDatabase.ts';
import { takeMessage } from '../../../server/mqtt/takeMessage.ts';
import { strokeStore } from '../../../server/results/strokeStore.ts';
import { type ChildOnDatabase, childOnDatabase } from '../../support/childOnDatabase.ts';
import { startBroker, type TestBroker } from '../../support/testBroker.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';
import { type Fleet, newFleet, strokeBody } from '../strokes/strokeFixture.ts';

/** Each death takes a start, and a start some seconds on a busy machine. */
const WITHIN_MS = 240_000;

interface Result {
  readonly id?: string;
  readonly results?: { key: string; strokeId: string; outcome: string; problem?: { status: number } }[];
  readonly problem?: { status: number; type: string };
}

let broker: TestBroker;
let service: ChildOnDatabase;
let token: string;
let fleet: Fleet;
let board: Board;

beforeAll(async () => {
  broker = await startBroker();
  const subscribed = onceSubscribed();
  service = await childOnDatabase({ MQTT_URL: broker.url });
  await subscribed;
  token = await service.signIn();
  fleet = await newFleet(service, token);
  board = await openBoard(fleet.loggerId);
}, WITHIN_MS);
afterAll(async () => {
  await board?.close();
  await service?.stop();
  await broker?.kill();
});

/** Resolves once the service has subscribed to the broker that runs now. */
function onceSubscribed(): Promise<void> {
  return new Promise((resolve) => {
    const look = (subscriptions: { topic: string }[]): void => {
      if (!subscriptions.some(({ topic }) => topic === 'slideload/+/strokes')) return;
      broker.aedes.off('subscribe', look);
      resolve();
    };
    broker.aedes.on('subscribe', look);
  });
}

/** A small board: it publishes, and hears what became of it. */
interface Board {
  publish(message: unknown): Promise<void>;
  next(): Promise<Result>;
  close(): Promise<void>;
}

async function openBoard(loggerId: string): Promise<Board> {
  const client: MqttClient = await connectAsync(broker.url, { reconnectPeriod: 0 });
  const heard: Result[] = [];
  let wake = (): void => undefined;
  client.on('message', (_topic, payload) => {
    heard.push((payload[0] >= 0x80 ? decode(payload) : JSON.parse(payload.toString())) as Result);
    wake();
  });
  await client.subscribeAsync(`slideload/${loggerId}/results`, { qos: 1 });
  return {
    publish: async (message) => {
      const raw = typeof message === 'string' || message instanceof Uint8Array;
      const payload = raw ? Buffer.from(message) : JSON.stringify(message);
      await client.publishAsync(`slideload/${loggerId}/strokes`, payload, { qos: 1 });
    },
    next: async () => {
      for (;;) {
        const result = heard.shift();
        if (result !== undefined) return result;
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
    },
    close: () => client.endAsync(true),
  };
}

const stroke = (day: number, more: object = {}) =>
  strokeBody(fleet.roomId, day, 9, { key: randomUUID(), ...more });

test('a stroke is stored and its sender told, and told the same when it comes again', async () => {
  const message = { token: fleet.loggerToken, strokes: stroke(0), id: 'first' };
  await board.publish(message);
  const stored = await board.next();
  expect(stored).toEqual({
    id: 'first',
    results: [{ key: message.strokes.key, strokeId: expect.any(String), outcome: 'stored' }],
  });
  await board.publish(message);
  expect((await board.next()).results).toEqual([{ ...stored.results?.[0], outcome: 'duplicate' }]);
  const { body } = await service.request('GET', `/strokes/${stored.results?.[0].strokeId}`, { token });
  expect(body).toMatchObject({ key: message.strokes.key, loggerId: fleet.loggerId });
});

test('several strokes, in CBOR, are answered in CBOR and in their order', async () => {
  const [good, bad] = [stroke(1), stroke(2, { roomId: randomUUID() })];
  await board.publish(encode({ token: fleet.loggerToken, strokes: [good, bad] }));
  const { results } = await board.next();
  expect(results?.map(({ key, outcome }) => [key, outcome])).toEqual([
    [good.key, 'stored'],
    [bad.key, 'rejected'],
  ]);
});

test('of several strokes in CBOR one that means nothing does not hold back the other', async () => {
  const [good, bad] = [stroke(1), stroke(2, { extra: new Date(0) })];
  await board.publish(encode({ token: fleet.loggerToken, strokes: [good, bad], id: 'half' }));
  expect(await board.next()).toMatchObject({
    id: 'half',
    results: [
      { key: good.key, outcome: 'stored' },
      { key: bad.key, outcome: 'rejected', problem: { errors: [{ pointer: '/extra' }] } },
    ],
  });
});

describe('what cannot be taken is answered with a problem, and the next message is heard', () => {
  test.each<[string, () => unknown, number]>([
    ['no token', () => ({ strokes: stroke(3) }), 401],
    ['a token that is none', () => ({ token: 'sll_nonsense', strokes: stroke(3) }), 401],
    ["a person's token", () => ({ token, strokes: stroke(3) }), 401],
    ['strokes alone, where topics are not trusted', () => stroke(3), 401],
    ['nothing', () => '', 400],
    ['half a JSON', () => '{"token": ', 400],
    ['no CBOR', () => new Uint8Array([0xff, 0xff]), 400],
    ['a number for a token', () => ({ token: 7, strokes: [] }), 422],
    ['no stroke', () => ({ token: fleet.loggerToken, strokes: [] }), 422],
    ['an id that is none', () => ({ token: fleet.loggerToken, strokes: stroke(3), id: {} }), 422],
    ['a key with a zero', () => ({ token: fleet.loggerToken, strokes: stroke(3, { key: '\0' }) }), 422],
  ])('%s', async (_, message, status) => {
    await board.publish(message());
    expect((await board.next()).problem?.status).toBe(status);
  });

  test('strokes that were forgotten, with the id that came', async () => {
    const forgetful = { token: fleet.loggerToken, id: 'forgetful' };
    for (const message of [forgetful, encode(forgetful), { ...forgetful, strokes: null }]) {
      await board.publish(message);
      expect(await board.next()).toMatchObject({
        id: 'forgetful',
        problem: { status: 422, errors: [{ pointer: '/strokes' }] },
      });
    }
    await board.publish({ ...forgetful, token: 'sll_nonsense' });
    expect(await board.next()).toMatchObject({ id: 'forgetful', problem: { status: 401 } });
  });

  test("another logger's topic", async () => {
    const other = await newFleet(service, token);
    const others = await openBoard(other.loggerId);
    await others.publish({ token: fleet.loggerToken, strokes: stroke(4) });
    expect((await others.next()).problem?.status).toBe(401);
    await others.close();
  });

  test('a topic that names no logger', async () => {
    const nowhere = await openBoard('nobody');
    await nowhere.publish({ token: fleet.loggerToken, strokes: stroke(4) });
    await board.publish({ token: fleet.loggerToken, strokes: stroke(5) });
    expect((await board.next()).results?.[0].outcome).toBe('stored');
    await nowhere.close();
  });
});

test('where the broker vouches for topics, strokes need no token', async () => {
  const database = openDatabase(service.databaseUrl, 2);
  const store = strokeStore(database);
  const parts = { database, store, trustTopic: true };
  const said = async (loggerId: string, message: unknown): Promise<Result> => {
    const answer = await takeMessage(parts, loggerId, Buffer.from(JSON.stringify(message)), () => undefined);
    return JSON.parse(answer.toString());
  };
  expect((await said(fleet.loggerId, stroke(7))).results?.[0].outcome).toBe('stored');
  expect((await said(fleet.loggerId, { strokes: [stroke(8)], id: 'eight' })).id).toBe('eight');
  expect((await said(randomUUID(), stroke(9))).problem?.status).toBe(401);
  expect((await said(fleet.loggerId, { token: 'sll_nonsense', strokes: stroke(9) })).problem?.status).toBe(
    401,
  );
  const other = await newFleet(service, token);
  expect((await said(other.loggerId, stroke(9))).results?.[0].outcome).toBe('rejected');
  await database.pool.end();
});

test('the broker is answered after the commit, and not before', async () => {
  const client = new pg.Client(service.databaseUrl);
  await client.connect();
  await client.query('begin; lock table strokes in access exclusive mode');
  let acknowledged = false;
  const ack = once(broker.aedes, 'ack').then(() => {
    acknowledged = true;
  });
  const message = { token: fleet.loggerToken, strokes: stroke(6) };
  await board.publish(message);
  // Until the service's own statement waits for the lock.
  await untilSomebodyWaits(client);
  expect(acknowledged).toBe(false);
  await client.query('commit');
  await ack;
  const { rows } = await client.query('select id from strokes where key = $1', [message.strokes.key]);
  expect(rows).toHaveLength(1);
  expect((await board.next()).results?.[0].strokeId).toBe(rows[0].id);
  await client.end();
});

test(
  'a broker and a service that die in mid-flow lose and double nothing of what senders keep until they hear',
  async () => {
    const strokes = Array.from({ length: 30 }, (_, day) => stroke(day));
    const left = new Map(strokes.map((each) => [each.key, each]));
    const hear = async (count: number): Promise<void> => {
      for (let i = 0; i < count; i++)
        for (const { key } of (await board.next()).results ?? []) left.delete(key);
    };
    const sendLeft = async (): Promise<void> => {
      for (const each of left.values()) await board.publish({ token: fleet.loggerToken, strokes: each });
    };
    await sendLeft();
    await hear(5);
    const { port } = broker;
    await broker.kill();
    broker = await startBroker(port);
    await onceSubscribed();
    board = await openBoard(fleet.loggerId);
    await sendLeft();
    await hear(5);
    await service.kill();
    const subscribed = onceSubscribed();
    await service.start();
    await subscribed;
    await sendLeft();
    while (left.size > 0) await hear(1);
    const listed = await service.request('GET', `/rooms/${fleet.roomId}/strokes?limit=500`, { token });
    const keys: string[] = listed.body.items.map(({ key }: { key: string }) => key);
    for (const { key } of strokes) expect(keys.filter((each) => each === key)).toEqual([key]);
  },
  WITHIN_MS,
);

test(
  'a service without its broker starts and serves, and finds it when it comes',
  async () => {
    const { port } = broker;
    await broker.kill();
    await service.kill();
    await service.start();
    expect((await service.request('GET', '/readyz')).status).toBe(200);
    broker = await startBroker(port);
    await onceSubscribed();
    board = await openBoard(fleet.loggerId);
    await board.publish({ token: fleet.loggerToken, strokes: stroke(40) });
    expect((await board.next()).results?.[0].outcome).toBe('stored');
  },
  WITHIN_MS,
);
