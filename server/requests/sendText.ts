import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { preferredType } from './preferredType.ts';

/**
 * Sends text that is the answer already: of a large one, making objects first and checking them against the schema
 * takes most of the time. The route's schema describes it in the OpenAPI document, and a test holds it to that.
 */
export function sendText(reply: FastifyReply, type: string, text: string): FastifyReply {
  return reply.type(`${type}; charset=utf-8`).send(text);
}

/** Whether an answer is to come as CSV by its request's `Accept`; says in it that it depends on that. */
export function wantsCsv(reply: FastifyReply): boolean {
  reply.header('vary', 'accept');
  const { accept } = reply.request.headers;
  return preferredType(accept, ['application/json', 'text/csv']) === 'text/csv';
}

/** Describes an answer that comes as JSON of that schema or, by `Accept`, as CSV. */
export function jsonOrCsv<Schema extends z.ZodType>(schema: Schema) {
  return {
    description: 'As JSON or, by Accept, as CSV.',
    content: { 'application/json': { schema }, 'text/csv': { schema: z.string() } },
  };
}
