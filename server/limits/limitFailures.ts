import type { FastifyRequest } from 'fastify';
import type { App } from '../appTypes.ts';
import { ProblemError, type ProblemName } from '../problems.ts';

const WINDOW_S = 60;
/** A guess that went wrong. Whoever is refused unheard has guessed nothing. */
const FAILURES: readonly ProblemName[] = ['wrong-password', 'not-found'];

interface FailureLimit {
  /** A hook: throws the 429 problem where too many from this address failed. */
  readonly refuse: (request: FastifyRequest) => Promise<void>;
  /** Does what may fail, and counts it if it does. */
  readonly counting: <Result>(request: FastifyRequest, work: () => Promise<Result>) => Promise<Result>;
}

/**
 * Limits how often those from one address may fail in a minute. What succeeds does not count: many people come from the
 * one address of their office.
 */
export function limitFailures(app: App, max: number): FailureLimit {
  const count = app.createRateLimit({ max, timeWindow: WINDOW_S * 1000 });
  return {
    refuse: async (request) => {
      const counted = await count(request, { increment: false });
      // The library only allows outright whom a list of ours names, and there is none.
      if (counted.isAllowed || counted.remaining > 0) return;
      throw new ProblemError(
        'too-many-requests',
        `At most ${max} failed attempts a minute from one address.`,
        {
          headers: { 'retry-after': String(Math.max(1, counted.ttlInSeconds)) },
        },
      );
    },
    counting: async (request, work) => {
      try {
        return await work();
      } catch (error) {
        if (error instanceof ProblemError && FAILURES.includes(error.problem)) await count(request);
        throw error;
      }
    },
  };
}
