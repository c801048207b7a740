import type { FastifyRequest } from 'fastify';

/** How our tokens begin (`access/tokens/tokens.ts`): an invitation's stands in the address that it is accepted at. */
const TOKENS = /\bsl[a-z]_[\w-]+/g;

/** Where and from what level on the service logs; no address in the log says a secret. */
export function loggerTo(level: string, stream: { write(line: string): void }) {
  return {
    level,
    stream,
    serializers: {
      req: ({ method, url, host, ip }: FastifyRequest) => ({
        method,
        url: url.replace(TOKENS, '[secret]'),
        host,
        remoteAddress: ip,
      }),
    },
  };
}
