import type { FastifyHelmetOptions } from '@fastify/helmet';

/**
 * What a browser is told. Only our own files run or load; no inline script or style. The charts set styles through
 * the object model, which this policy does not concern.
 */
export const SECURITY_HEADERS: FastifyHelmetOptions = {
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'self'"],
      baseUri: ["'none'"],
      objectSrc: ["'none'"],
      frameAncestors: ["'none'"],
      formAction: ["'self'"],
    },
  },
  frameguard: { action: 'deny' },
  referrerPolicy: { policy: 'no-referrer' },
};
