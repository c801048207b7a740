import { randomUUID } from 'node:crypto';
import { afterEach } from 'vitest';
import { type LoggerLink, openLink } from '../../support/loggerLink.ts';
import type { TestService } from '../../support/service.ts';
import { type Fleet, strokeBody } from '../strokes/strokeFixture.ts';

/** A stroke to be sent piece by piece. */
export interface LiveStroke {
  readonly key: string;
  readonly begin: object;
  readonly pieces: readonly { type: 'samples'; key: string; seq: number; side: string; amps: number[] }[];
  readonly end: object;
  /** What the trace must hold when all of it came. */
  readonly sides: readonly { side: string; rateHz: number; amps: number[] }[];
}

const PIECE_SAMPLES = 25;

/** The stroke of `strokeBody` in pieces of half a second, both sides in turn. */
export function liveStroke(fleet: Fleet, day = 0, key: string = randomUUID()): LiveStroke {
  // Through JSON, which has no negative zero.
  const { roomId, direction, startedAt, sides } = throughJson(strokeBody(fleet.roomId, day));
  const pieces: LiveStroke['pieces'][number][] = [];
  for (let from = 0; from < sides[0].amps.length; from += PIECE_SAMPLES)
    for (const { side, amps } of sides)
      pieces.push({
        type: 'samples',
        key,
        seq: pieces.length,
        side,
        amps: amps.slice(from, from + PIECE_SAMPLES),
      });
  const begun = sides.map(({ side, rateHz }) => ({ side, rateHz }));
  return {
    key,
    begin: { type: 'begin', key, roomId, direction, startedAt, sides: begun },
    pieces,
    end: { type: 'end', key },
    sides,
  };
}

/** Opens links to the service, each of which is dropped after the test that opened it. */
export function linksOf(service: () => Pick<TestService, 'url'>) {
  let links: LoggerLink[] = [];
  afterEach(async () => {
    // One that reads nothing would not hear of its end.
    for (const link of links) link.socket.resume();
    await Promise.all(links.map((link) => link.drop()));
    links = [];
  });
  return async (token: string | null, headers = {}, url = service().url): Promise<LoggerLink> => {
    const link = await openLink(url, token, headers);
    links.push(link);
    return link;
  };
}

function throughJson<Value>(value: Value): Value {
  return JSON.parse(JSON.stringify(value));
}

/** Says the pieces and waits until each is acknowledged. */
export async function sayPieces(link: LoggerLink, pieces: LiveStroke['pieces']): Promise<void> {
  for (const piece of pieces) link.say(piece);
  for (const { key, seq } of pieces) {
    const answer = await link.next();
    if (answer.type !== 'ack' || answer.key !== key || answer.seq !== seq)
      throw new Error(`Not an ack of ${seq}: ${JSON.stringify(answer)}`);
  }
}

/** Sends all of a stroke and answers its id. */
export async function sayAll(link: LoggerLink, stroke: LiveStroke): Promise<string> {
  link.say(stroke.begin);
  await sayPieces(link, stroke.pieces);
  link.say(stroke.end);
  return (await link.next('stored')).strokeId;
}

export async function sidesOf(service: Pick<TestService, 'request'>, token: string, strokeId: string) {
  const answer = await service.request('GET', `/strokes/${strokeId}/trace`, { token });
  if (answer.status !== 200) throw new Error(`The trace answered ${answer.status}: ${answer.text}`);
  return answer.body.sides;
}
