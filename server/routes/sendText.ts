import type { FastifyReply } from 'fastify';

/**
 * Sends text that is the answer already: of a large one, making objects first and checking them against the schema
 * takes most of the time. The route's schema describes it in the OpenAPI document, and a test holds it to that.
 */
export function sendText(reply: FastifyReply, type: string, text: string): FastifyReply {
  return reply.type(`${type}; charset=utf-8`).send(text);
}
