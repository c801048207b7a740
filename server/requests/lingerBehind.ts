import type { IncomingMessage } from 'node:http';
import { Socket } from 'node:net';
import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';
import type { Limits } from '../limits/limits.ts';
import { PROBLEMS } from '../problems.ts';

/**
 * An answer may be there before its request is, as of a body that is too large. A connection that ends with it goes on
 * reading until the request is whole (RFC 9112, section 9.6): cut off at once, whoever writes all of a request
 * before reading would find a broken connection in place of the answer. Only those that were too slow are.
 */
export const lingerBehind = fp(async (app: App, limits: Limits) => {
  app.addHook('onSend', async ({ raw }, reply) => {
    if (!raw.complete && reply.statusCode !== PROBLEMS['request-timeout'].status) linger(raw, limits);
  });
});

function linger(request: IncomingMessage, { bodyAtMostMs, bodyStallMs }: Limits): void {
  const { socket } = request;
  // What Node calls behind the last answer of a connection.
  socket.destroySoon = () => {
    if (request.complete) {
      Socket.prototype.destroySoon.call(socket);
      return;
    }
    socket.end();
    socket.setTimeout(bodyStallMs);
    const cutting = setTimeout(() => socket.destroy(), bodyAtMostMs);
    socket.once('close', () => clearTimeout(cutting));
    request.once('close', () => socket.destroy());
  };
}
