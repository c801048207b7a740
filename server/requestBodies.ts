import type { FastifyRequest } from 'fastify';
import { ProblemError } from './problems.ts';

export const LARGE_BODY_BYTES = 32 * 1024 * 1024;

/**
 * Options of a route that takes large bodies, compressed or not: `app.post(path, {...LARGE_BODY, schema, config:
 * {compressedBody: true}}, handler)`. The limit holds for the bytes after decompression and is applied while they
 * stream, so that a small body which unfolds without end is cut off.
 */
export const LARGE_BODY = {
  bodyLimit: LARGE_BODY_BYTES,
  decompress: {
    requestEncodings: ['gzip', 'identity'] satisfies ('gzip' | 'identity')[],
    onInvalidRequestPayload: () =>
      new ProblemError('malformed-request', 'The body is not whole and valid gzip.'),
  },
};

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The route takes `Content-Encoding: gzip`. */
    compressedBody?: boolean;
  }
}

/** Refuses a compressed body where it is not taken, and an unknown compression anywhere (RFC 9110, section 8.4). */
export async function refuseCompressedBody(request: FastifyRequest): Promise<void> {
  const encoding = request.headers['content-encoding']?.trim().toLowerCase();
  if (encoding === undefined || encoding === 'identity') return;
  const taken = request.routeOptions.config.compressedBody === true;
  if (taken && encoding === 'gzip') return;
  throw new ProblemError('unsupported-media-type', `Content-Encoding ${encoding} is not taken here.`, {
    headers: { 'accept-encoding': taken ? 'gzip, identity' : 'identity' },
  });
}
