import type { FastifyReply, FastifyRequest } from 'fastify';

export const SESSION_COOKIE = 'session';

/** Out of reach of scripts and of other sites' forms; over https only, where it was given over https. */
function attributes(request: FastifyRequest) {
  return { httpOnly: true, sameSite: 'lax', secure: request.protocol === 'https', path: '/' } as const;
}

export function setSessionCookie(
  request: FastifyRequest,
  reply: FastifyReply,
  session: { token: string; expiresAt: Date },
): void {
  reply.setCookie(SESSION_COOKIE, session.token, { ...attributes(request), expires: session.expiresAt });
}

export function clearSessionCookie(request: FastifyRequest, reply: FastifyReply): void {
  reply.clearCookie(SESSION_COOKIE, attributes(request));
}
