import type { Readable } from 'node:stream';
import type { FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';
import { BodyMemory, type HeldBody } from './bodyMemory.ts';
import type { Limits } from './limits.ts';
import { bodyTooLarge, readBody } from './readBody.ts';
import { senderOf } from './senderOf.ts';
import { WorkTurns } from './workTurns.ts';

/** A few strokes. What is larger waits for others of its size, and holds up none of these. */
const SMALL_BYTES = 1024 * 1024;
/** Worked on at once: of large ones one, or several of together no more than the largest. */
const LARGE_AT_ONCE_BYTES = 32 * 1024 * 1024;
const SMALL_AT_ONCE_BYTES = 8 * 1024 * 1024;

declare module 'fastify' {
  interface FastifyInstance {
    /** What a parser of bodies reads one with: within the limits of the route, of its sender and of the process. */
    readBody(request: FastifyRequest, payload: Readable): Promise<Buffer>;
  }
  interface FastifyRequest {
    heldBody: HeldBody | null;
    leaveWork: (() => void) | null;
  }
}

/** Holds the bodies of all requests to the memory that there is for them. */
export const limitBodies = fp(async (app: App, limits: Limits) => {
  const memory = new BodyMemory(limits.bodyBytes, limits.waitMs);
  const turns = { small: new WorkTurns(SMALL_AT_ONCE_BYTES), large: new WorkTurns(LARGE_AT_ONCE_BYTES) };

  const wholeOf = async (request: FastifyRequest, payload: Readable): Promise<Buffer> => {
    const mostBytes = request.routeOptions.bodyLimit ?? SMALL_BYTES;
    if (Number(request.headers['content-length']) > mostBytes) throw bodyTooLarge();
    request.heldBody = memory.begin(senderOf(request));
    return readBody(payload, mostBytes, request.heldBody, limits);
  };

  app.decorateRequest('heldBody', null);
  app.decorateRequest('leaveWork', null);
  app.decorate('readBody', async (request: FastifyRequest, payload: Readable) => {
    const body = await wholeOf(request, payload).catch((error: unknown) => {
      readPast(request, payload);
      throw error;
    });
    const turn = body.length > SMALL_BYTES ? turns.large : turns.small;
    const leaveWork = await turn.take(body.length);
    // It may have been answered meanwhile that it takes too long.
    if (request.heldBody === null) leaveWork();
    else request.leaveWork = leaveWork;
    return body;
  });
  // The work is done when there is something to answer, also where nobody is there to hear it.
  app.addHook('onSend', async (request) => {
    request.leaveWork?.();
    request.heldBody?.leave();
    request.heldBody = null;
  });
});

/** The rest of a refused body: whoever still sends it is listened to, or would not get to read the answer. */
function readPast({ raw }: FastifyRequest, payload: Readable): void {
  raw.unpipe().resume();
  if (payload !== raw) payload.destroy();
}
