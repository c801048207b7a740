import type { Readable } from 'node:stream';
import { createGunzip } from 'node:zlib';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { ProblemError } from '../problems.ts';

export const LARGE_BODY_BYTES = 32 * 1024 * 1024;

/**
 * Options of a route that takes large bodies, compressed or not: `app.post(path, {...LARGE_BODY, schema, config:
 * {compressedBody: true}}, handler)`. The limit holds for the bytes after decompression and is applied while they
 * stream, so that a small body which unfolds without end is cut off.
 */
export const LARGE_BODY = { bodyLimit: LARGE_BODY_BYTES };

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
 * Unfolds a compressed body where it is taken, refuses it elsewhere, and refuses an unknown compression anywhere; the
 * body of a GET is not looked at.
 */
export async function decompressBody(
  request: FastifyRequest,
  _reply: FastifyReply,
  payload: Readable,
): Promise<Readable> {
  const encoding = ['GET', 'HEAD'].includes(request.method) ? undefined : encodingOf(request);
  if (encoding === undefined || encoding === 'identity') return payload;
  const taken = request.routeOptions.config.compressedBody === true;
  if (taken && encoding === 'gzip') return unfold(payload);
  throw new ProblemError('unsupported-media-type', `Content-Encoding ${encoding} is not taken here.`, {
    headers: { 'accept-encoding': taken ? 'gzip, identity' : 'identity' },
  });
}

/** No `pipeline`: it would end the request with the gzip that is broken, whose sender is still to hear of it. */
function unfold(packed: Readable): Readable {
  const unfolded = createGunzip();
  packed.on('error', (error) => unfolded.destroy(error));
  return packed.pipe(unfolded);
}
