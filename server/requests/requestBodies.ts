import type { FastifyRequest } from 'fastify';
import { ProblemError } from '../problems.ts';

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

/** `x-gzip` is the same, and case does not matter (RFC 9110, sections 8.4.1 and 8.4.1.3). */
function encodingOf(request: FastifyRequest): string | undefined {
  const encoding = request.headers['content-encoding']?.trim().toLowerCase();
  return encoding === 'x-gzip' ? 'gzip' : encoding;
}

/**
 * Refuses a compressed body where it is not taken, and an unknown compression anywhere; the body of a GET is not looked
 * at. What is taken is put down in the one spelling that the decompression knows.
 */
export async function refuseCompressedBody(request: FastifyRequest): Promise<void> {
  const encoding = ['GET', 'HEAD'].includes(request.method) ? undefined : encodingOf(request);
  if (encoding === undefined || encoding === 'identity') return;
  const taken = request.routeOptions.config.compressedBody === true;
  if (taken && encoding === 'gzip') {
    request.headers['content-encoding'] = encoding;
    return;
  }
  throw new ProblemError('unsupported-media-type', `Content-Encoding ${encoding} is not taken here.`, {
    headers: { 'accept-encoding': taken ? 'gzip, identity' : 'identity' },
  });
}
