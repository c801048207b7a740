import { afterAll, beforeAll, expect, test } from 'vitest';
import { type ChildOnDatabase, childOnDatabase } from '../../support/childOnDatabase.ts';
import { openLink } from '../../support/loggerLink.ts';
import { type Fleet, newFleet } from '../strokes/strokeFixture.ts';
import { liveStroke, sidesOf } from './liveFixture.ts';

/** Acknowledgements that are heard before the service is killed, while more pieces are on their way. */
const KILLED_AFTER = [0, 5, 2];
const ON_THEIR_WAY = 4;

/** Each death takes a start, and a start some seconds on a busy machine. */
const WITHIN_MS = 240_000;

let service: ChildOnDatabase;
let token: string;
let fleet: Fleet;

beforeAll(async () => {
  service = await childOnDatabase();
  token = await service.signIn();
  fleet = await newFleet(service, token);
});
afterAll(() => service?.stop());

/** The strokes of the room as they are listed. */
async function listed(): Promise<{ id: string; key: string }[]> {
  return (await service.request('GET', `/rooms/${fleet.roomId}/strokes`, { token })).body.items;
}

test(
  'what was acknowledged survives the death of the service, as often as it dies',
  async () => {
    const stroke = liveStroke(fleet);
    let acknowledged = 0;
    for (const acks of KILLED_AFTER) {
      const link = await openLink(service.url, fleet.loggerToken);
      link.say(stroke.begin);
      let from = 0;
      if (acknowledged > 0) {
        from = (await link.next('resume')).nextSeq;
        expect(from).toBeGreaterThanOrEqual(acknowledged);
      }
      for (const piece of stroke.pieces.slice(from, from + acks + ON_THEIR_WAY)) link.say(piece);
      for (let i = 0; i < acks; i++) acknowledged = (await link.next('ack')).seq + 1;
      await service.kill();
      await link.closed;
      await service.start();
    }
    const link = await openLink(service.url, fleet.loggerToken);
    link.say(stroke.begin);
    const { nextSeq } = await link.next('resume');
    expect(nextSeq).toBeGreaterThanOrEqual(acknowledged);
    for (const piece of stroke.pieces.slice(nextSeq)) link.say(piece);
    link.say(stroke.end);
    const { strokeId } = await link.next('stored');
    expect(await sidesOf(service, token, strokeId)).toEqual(stroke.sides);
  },
  WITHIN_MS,
);

test(
  'a death while the end is on its way leaves exactly one stroke',
  async () => {
    for (const day of [1, 2]) {
      const stroke = liveStroke(fleet, day);
      const link = await openLink(service.url, fleet.loggerToken);
      link.say(stroke.begin);
      for (const piece of stroke.pieces) link.say(piece);
      for (const { seq } of stroke.pieces) expect((await link.next('ack')).seq).toBe(seq);
      link.say(stroke.end);
      // The first dies at once, the other a little later in its work.
      if (day > 1) await service.request('GET', '/readyz');
      await service.kill();
      await service.start();
      const again = await openLink(service.url, fleet.loggerToken);
      again.say(stroke.begin);
      const answer = await again.next();
      if (answer.type === 'resume') again.say(stroke.end);
      const { strokeId } = answer.type === 'stored' ? answer : await again.next('stored');
      expect(await sidesOf(service, token, strokeId)).toEqual(stroke.sides);
      expect((await listed()).filter(({ key }) => key === stroke.key)).toHaveLength(1);
      await again.drop();
    }
  },
  WITHIN_MS,
);
