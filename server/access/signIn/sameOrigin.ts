import type { FastifyRequest } from 'fastify';
import { ProblemError } from '../../problems.ts';

/**
 * Whether a request that changes something comes from our own pages, as far as its browser says: `Origin`, else
 * `Sec-Fetch-Site`. Programs send neither, and other sites' pages cannot leave them out.
 */
export function isFromOwnPages(request: FastifyRequest): boolean {
  const { origin } = request.headers;
  if (origin !== undefined) return URL.canParse(origin) && new URL(origin).host === request.host;
  const site = request.headers['sec-fetch-site'];
  return site === undefined || site === 'same-origin' || site === 'none';
}

/** Reading is harmless from anywhere: other sites' scripts cannot see the answer. */
export function changesSomething(request: FastifyRequest): boolean {
  return !['GET', 'HEAD', 'OPTIONS'].includes(request.method);
}

export function refuseForeignPage(request: FastifyRequest): void {
  if (changesSomething(request) && !isFromOwnPages(request))
    throw new ProblemError('foreign-origin', 'Send it from the pages of this service, or with a token.');
}
