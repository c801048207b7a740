import { request } from 'node:http';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { readRoom } from '../results/roomAnswers.ts';
import { type Fleet, newFleet, send, store, strokeBody } from './strokeFixture.ts';

const service = serviceOfTests();
const dealer = dealerOfTests(service);

const STROKES = 20;
const RUNS = 5;
const days = Array.from({ length: STROKES }, (_, day) => day);
const stroke = (fleet: Fleet, day: number) => strokeBody(fleet.roomId, day, day < 17 ? 9 : 13);

/** One sender's way through the strokes: all of them in some order, some twice, cut into messages. */
interface Message {
  readonly days: readonly number[];
  /** Its line drops in the middle of the message, which is then sent anew. */
  readonly dropped: boolean;
}

const way: fc.Arbitrary<Message[]> = fc
  .tuple(
    fc.shuffledSubarray(days, { minLength: STROKES, maxLength: STROKES }),
    fc.array(fc.nat(STROKES - 1), { maxLength: 8 }),
    fc.array(fc.record({ size: fc.integer({ min: 1, max: 9 }), dropped: fc.boolean() }), {
      minLength: 1,
      maxLength: 6,
    }),
  )
  .map(([order, again, cuts]) => {
    const all = [...order, ...again];
    const messages: Message[] = [];
    for (let i = 0; all.length > 0; i++) {
      const { size, dropped } = cuts[i % cuts.length];
      messages.push({ days: all.splice(0, size), dropped });
    }
    return messages;
  });

/** Sends the first half of a body and cuts the line. */
async function sendHalf(fleet: Fleet, body: string): Promise<void> {
  const sending = request(`${service.url}/api/v1/strokes`, {
    method: 'POST',
    headers: {
      authorization: `Bearer ${fleet.loggerToken}`,
      'content-type': 'application/json',
      'content-length': Buffer.byteLength(body),
    },
  });
  // It is cut: whatever the socket says of that is no news.
  sending.on('error', () => undefined);
  const closed = new Promise((resolve) => sending.on('close', resolve));
  sending.write(body.slice(0, body.length / 2), () => sending.destroy());
  await closed;
}

async function follow(fleet: Fleet, messages: readonly Message[]): Promise<void> {
  for (const message of messages) {
    const body = message.days.map((day) => stroke(fleet, day));
    if (message.dropped) await sendHalf(fleet, JSON.stringify(body));
    const answer = await send(service, fleet.loggerToken, body);
    expect(answer.status, answer.text).toBe(200);
    for (const { outcome } of answer.body.results) expect(outcome).toMatch(/^(stored|duplicate)$/);
  }
}

test('repeated, reordered, split, half-sent, by several at once: the results of one pass in order', async () => {
  const inOrder = await newFleet(service, dealer.token);
  await store(
    service,
    inOrder,
    days.map((day) => stroke(inOrder, day)),
  );
  const expected = await readRoom(service, inOrder);
  const property = fc.asyncProperty(fc.array(way, { minLength: 1, maxLength: 3 }), async (ways) => {
    const fleet = await newFleet(service, dealer.token);
    await Promise.all(ways.map((messages) => follow(fleet, messages)));
    expect(await readRoom(service, fleet)).toBe(expected);
  });
  await fc.assert(property, { numRuns: RUNS, endOnFailure: true });
}, 300_000);
