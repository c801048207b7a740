import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';
import { ProblemError, tooMuchAtOnce } from '../problems.ts';
import type { Limits } from './limits.ts';
import { senderOf } from './senderOf.ts';
import { Tally } from './tally.ts';

const WINDOW_S = 60;

declare module 'fastify' {
  interface FastifyRequest {
    /** Says that the sender has one request less under way. */
    leaveSender: (() => void) | null;
  }
}

/**
 * Limits how many requests a logger or a person may send in a minute and have under way, and says in each answer how
 * many are left (`RateLimit`, by the IETF's draft-ietf-httpapi-ratelimit-headers-10).
 */
export const limitSenders = fp(async (app: App, { requestsPerMinute, requestsAtOnce }: Limits) => {
  const count = app.createRateLimit({
    max: requestsPerMinute,
    timeWindow: WINDOW_S * 1000,
    keyGenerator: senderOf,
  });
  const underWay = new Tally();

  app.decorateRequest('leaveSender', null);
  app.addHook('onRequest', async (request, reply) => {
    if (request.caller === null) return;
    const sender = senderOf(request);
    const counted = await count(request);
    // The library only allows outright whom a list of ours names, and there is none.
    if (counted.isAllowed) return;
    const { remaining, ttlInSeconds, isExceeded } = counted;
    reply.headers({
      'ratelimit-policy': `"requests";q=${requestsPerMinute};w=${WINDOW_S}`,
      ratelimit: `"requests";r=${remaining};t=${ttlInSeconds}`,
    });
    if (isExceeded)
      throw new ProblemError('too-many-requests', `At most ${requestsPerMinute} requests a minute.`, {
        headers: { 'retry-after': String(Math.max(1, ttlInSeconds)) },
      });
    // A WebSocket is no request that will be answered; those have limits of their own.
    if (request.ws) return;
    if (underWay.of(sender) >= requestsAtOnce) throw tooMuchAtOnce();
    underWay.add(sender, 1);
    request.leaveSender = () => {
      underWay.add(sender, -1);
      request.leaveSender = null;
    };
  });
  app.addHook('onSend', async (request) => request.leaveSender?.());
});
