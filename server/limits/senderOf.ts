import type { FastifyRequest } from 'fastify';
import { callerId } from '../access/scopes/caller.ts';

/** Whom a request is held against: the logger or the person; where nobody is known, the address it comes from. */
export function senderOf(request: FastifyRequest): string {
  return request.caller === null ? `address ${request.ip}` : callerId(request.caller);
}
