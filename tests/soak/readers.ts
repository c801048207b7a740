import { setTimeout as pause } from 'node:timers/promises';
import { Random } from '../../server/demo/simulator/random.ts';
import { type Caller, tryOnce } from './insist.ts';
import type { Promised } from './senders.ts';

export interface Reading {
  /** Answers by status; 0: nobody answered. */
  readonly statuses: Map<number, number>;
  readonly faults: string[];
}

const PAUSE_MS = 150;

/** People who look at everything, in no order, until they are told to stop. */
export async function runReaders(
  person: Caller,
  promised: readonly Promised[],
  { seed, atOnce, until }: { seed: number; atOnce: number; until: AbortSignal },
  { statuses, faults }: Reading,
): Promise<void> {
  const read = async (random: Random): Promise<void> => {
    while (!until.aborted) {
      await pause(PAUSE_MS);
      if (promised.length === 0) continue;
      const one = promised[random.integer(0, promised.length - 1)];
      const paths = pathsOf(one);
      const path = paths[random.integer(0, paths.length - 1)];
      const answer = await tryOnce(person, 'GET', path);
      const status = answer?.status ?? 0;
      statuses.set(status, (statuses.get(status) ?? 0) + 1);
      if (![0, 200, 503].includes(status))
        faults.push(`GET ${path} was answered with ${status}: ${answer?.text}`);
    }
  };
  await Promise.all(Array.from({ length: atOnce }, (_, place) => read(new Random(seed + place))));
}

function pathsOf({ room, there: { roomId, coachId }, strokes, services }: Promised): string[] {
  const side = room.member.room.sides[0];
  const anyStroke = strokes.values().next().value;
  const anyService = services.values().next().value;
  return [
    '/overview',
    '/coaches?limit=20',
    '/warnings?state=all&limit=50',
    `/coaches/${coachId}`,
    `/rooms/${roomId}/status`,
    `/rooms/${roomId}/strokes?limit=50`,
    `/rooms/${roomId}/warnings?state=all`,
    `/rooms/${roomId}/trend?measure=runningAmps&direction=extend&side=${encodeURIComponent(side)}`,
    ...(anyStroke === undefined ? [] : [`/strokes/${anyStroke}`, `/strokes/${anyStroke}/trace`]),
    ...(anyService === undefined ? [] : [`/rooms/${roomId}/comparison?service=${anyService}`]),
  ];
}
