import { once } from 'node:events';
import type { Duplex } from 'node:stream';
import websocket from '@fastify/websocket';
import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';
import { endWithProblem } from '../requests/answerBrokenRequest.ts';
import { CLOSE } from './socket.ts';

/** The largest message that any of our sockets takes; each has its own limit below it. */
const LARGEST_MESSAGE_BYTES = 1024 * 1024;

/** Programs get this long to answer that the service goes away; then their sockets are cut. */
const CLOSE_WITHIN_MS = 1000;

const TAKEN_VERSIONS = ['sec-websocket-version: 13, 8'];

/** Lets routes take WebSockets. When the service stops they are closed before it waits for its connections. */
export const webSockets = fp(async (app: App) => {
  await app.register(websocket, {
    options: { maxPayload: LARGEST_MESSAGE_BYTES },
    // A link that breaks is no failure of ours; whoever holds the socket learns of it by its closing.
    errorHandler: (error, socket, request) => {
      request.log.info({ err: error }, 'A WebSocket broke.');
      socket.terminate();
    },
    preClose: async () => closeAll(app),
  });
  // Without this the library answers a handshake that is none itself, as HTML.
  app.websocketServer.on('wsClientError', (error: Error, socket: Duplex) => {
    endWithProblem(socket, 'malformed-request', `This opens no WebSocket. ${error.message}.`, TAKEN_VERSIONS);
  });
});

async function closeAll(app: App): Promise<void> {
  const sockets = [...app.websocketServer.clients];
  const closed = Promise.all(sockets.map((socket) => once(socket, 'close')));
  for (const socket of sockets) socket.close(CLOSE.goingAway, 'The service is stopping.');
  const timer = setTimeout(() => {
    for (const socket of sockets) socket.terminate();
  }, CLOSE_WITHIN_MS);
  await closed.finally(() => clearTimeout(timer));
  app.websocketServer.close();
}
