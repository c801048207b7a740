import type { FastifyReply } from 'fastify';
import { z } from 'zod';

/**
 * Sends text that is the answer already: of a large one, making objects first and checking them against the schema
 * takes most of the time. The route's schema describes it in the OpenAPI document, and a test holds it to that.
 */
export function sendText(reply: FastifyReply, type: string, text: string): FastifyReply {
  return reply.type(`${type}; charset=utf-8`).send(text);
}

/** Describes an answer that comes as JSON of that schema or, by `Accept`, as CSV. */
export function jsonOrCsv<Schema extends z.ZodType>(schema: Schema) {
  return {
    description: 'As JSON or, by Accept, as CSV.',
    content: { 'application/json': { schema }, 'text/csv': { schema: z.string() } },
  };
}
