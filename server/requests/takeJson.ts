import type { Readable } from 'node:stream';
import type { FastifyRequest } from 'fastify';
import { checkJsonShape } from '../../ingest/json/shape.ts';
import type { App } from '../appTypes.ts';
import { ProblemError } from '../problems.ts';

const UTF8 = new TextDecoder('utf-8', { fatal: true });

/**
 * The form that bodies have unless a route takes others: JSON in UTF-8. `__proto__` and `constructor.prototype` are
 * refused, and so are bytes that are not UTF-8, which would otherwise be replaced unseen, and what is nested too deep. An
 * empty body is no body: clients that always name a content type may still send a DELETE.
 */
export function takeJson(app: App): void {
  const parse = app.getDefaultJsonParser('error', 'error');
  app.removeAllContentTypeParsers();
  app.addContentTypeParser('application/json', async (request: FastifyRequest, payload: Readable) => {
    const body = await app.readBody(request, payload);
    if (body.length === 0) return undefined;
    checkJsonShape(body);
    const text = textOf(body);
    return new Promise((resolve, reject) => {
      // It calls back at once.
      void parse(request, text, (error, value) => (error === null ? resolve(value) : reject(error)));
    });
  });
}

function textOf(body: Buffer): string {
  try {
    return UTF8.decode(body);
  } catch (cause) {
    throw new ProblemError('malformed-request', 'The body is not UTF-8.', { cause });
  }
}
