import type { FastifyRequest } from 'fastify';

/** What tells who the caller is, and how it reached us; the answers depend on nothing else that it sent. */
const TAKEN_OVER = ['cookie', 'host', 'x-forwarded-for', 'x-forwarded-host', 'x-forwarded-proto'];

/**
 * Asks the API itself in the name of whoever sent the request: every lock on the way stands as it does for the
 * caller's own questions. Answers the text of what was answered; null for whatever the caller is refused.
 */
export async function askAsCaller(request: FastifyRequest, question: string): Promise<string | null> {
  const answer = await request.server.inject({
    method: 'GET',
    url: `/api/v1${question}`,
    remoteAddress: request.socket.remoteAddress,
    headers: Object.fromEntries(
      TAKEN_OVER.flatMap((name) =>
        request.headers[name] === undefined ? [] : [[name, request.headers[name]]],
      ),
    ),
  });
  return answer.statusCode === 200 ? answer.body : null;
}
