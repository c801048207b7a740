import type { FastifyReply, FastifyRequest } from 'fastify';

/** Over plain HTTP, as on loopback. */
export const SESSION_COOKIE = 'session';
/** Over https: browsers take a cookie of this name from this host alone, and only over https. */
const HOST_SESSION_COOKIE = '__Host-session';

/** Out of reach of scripts and of other sites' forms; over https only, where it was given over https. */
function attributes(request: FastifyRequest) {
  return { httpOnly: true, sameSite: 'lax', secure: request.protocol === 'https', path: '/' } as const;
}

function nameFor(request: FastifyRequest): string {
  return request.protocol === 'https' ? HOST_SESSION_COOKIE : SESSION_COOKIE;
}

/** Over https the plain name counts for nothing: another site of the same domain could have set it. */
export function sessionCookieOf(request: FastifyRequest): string | undefined {
  const ofHost = request.cookies[HOST_SESSION_COOKIE];
  return ofHost ?? (request.protocol === 'https' ? undefined : request.cookies[SESSION_COOKIE]);
}

export function setSessionCookie(
  request: FastifyRequest,
  reply: FastifyReply,
  session: { token: string; expiresAt: Date },
): void {
  reply.setCookie(nameFor(request), session.token, { ...attributes(request), expires: session.expiresAt });
}

export function clearSessionCookie(request: FastifyRequest, reply: FastifyReply): void {
  reply.clearCookie(nameFor(request), attributes(request));
}
