import type { FastifyBaseLogger } from 'fastify';
import { rest } from '../rest.ts';

export const LOOK_EVERY_MS = 1000;

/**
 * Something that is done piece by piece, each in a place of its own: `claim` takes at most so many pieces for nobody
 * else to take, `work` does one. A piece that hangs holds its place and no other.
 */
export interface Lane<Piece> {
  readonly places: number;
  claim(most: number, now: Date): Promise<readonly Piece[]>;
  /** `cut`: what is under way must end, come what may. */
  work(piece: Piece, now: Date, cut: AbortSignal): Promise<void>;
}

/** Keeps a lane at work until it is told to stop; what is under way then is let end, until it is cut off. */
export async function keepAtWork<Piece>(
  lane: Lane<Piece>,
  log: FastifyBaseLogger,
  stopping: AbortSignal,
  cut: AbortSignal,
): Promise<void> {
  const underWay = new Set<Promise<void>>();
  const begin = (piece: Piece): void => {
    const work = lane
      .work(piece, new Date(), cut)
      .catch((error: unknown) => log.error({ err: error }, 'Something that was to be told came to nothing.'))
      .finally(() => underWay.delete(work));
    underWay.add(work);
  };
  while (!stopping.aborted) {
    const free = lane.places - underWay.size;
    for (const piece of free > 0 ? await claimed(lane, free, log) : []) begin(piece);
    // A place that becomes free is given away at once.
    await Promise.race([rest(LOOK_EVERY_MS, stopping), ...underWay]);
  }
  await Promise.all(underWay);
}

/** While the database does not answer there is nothing to do. */
async function claimed<Piece>(
  lane: Lane<Piece>,
  most: number,
  log: FastifyBaseLogger,
): Promise<readonly Piece[]> {
  try {
    return await lane.claim(most, new Date());
  } catch (error) {
    log.warn({ err: error }, 'What is to be told cannot be looked up.');
    return [];
  }
}
