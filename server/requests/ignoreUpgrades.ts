import type { IncomingMessage } from 'node:http';
import type { Socket } from 'node:net';
import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';

type Upgraded = (request: IncomingMessage, socket: Socket, head: Buffer) => void;

/** What asks for another protocol, and what goes with it, is taken off the request. */
const OF_UPGRADE = new Set(['upgrade', 'http2-settings']);

/**
 * The option of Node's HTTP server, from 24.9 on, by which it takes only what offers a WebSocket for an upgrade and everything
 * else for an ordinary request. Older ones do not know it and leave it to `ignoreUpgrades`.
 */
export const UPGRADE_TO_WEBSOCKETS_ONLY = { shouldUpgradeCallback: offersWebSocket };

/**
 * Ignores an offer of another protocol than WebSocket, such as clients of HTTP/2 make on a plain connection (`h2c`): RFC 9110,
 * section 7.8, allows that. A Node without the option above would hand the request, body and all, to whoever takes WebSockets.
 * So it is read once more from its beginning without the offer; once on a connection, which no client exceeds.
 */
export const ignoreUpgrades = fp(async (app: App) => {
  app.addHook('onReady', async () => {
    const { server } = app;
    // Node calls whoever listens to this with just these.
    const takers = server.listeners('upgrade') as Upgraded[];
    const reread = new WeakSet<Socket>();
    server.removeAllListeners('upgrade');
    server.on('upgrade', (request: IncomingMessage, socket: Socket, head: Buffer) => {
      if (offersWebSocket(request) || reread.has(socket)) {
        for (const take of takers) take.call(server, request, socket, head);
        return;
      }
      reread.add(socket);
      socket.unshift(Buffer.concat([headWithoutOffer(request), head]));
      server.emit('connection', socket);
    });
  });
});

const tokensOf = (value = ''): string[] => value.split(',').map((token) => token.trim().toLowerCase());

function offersWebSocket({ headers }: IncomingMessage): boolean {
  return tokensOf(headers.upgrade).some((token) => token === 'websocket' || token.startsWith('websocket/'));
}

function headWithoutOffer({ method, url, httpVersion, rawHeaders }: IncomingMessage): Buffer {
  const lines = [`${method} ${url} HTTP/${httpVersion}`];
  for (let i = 0; i < rawHeaders.length; i += 2) {
    const [name, value] = [rawHeaders[i], rawHeaders[i + 1]];
    const kind = name.toLowerCase();
    if (OF_UPGRADE.has(kind)) continue;
    if (kind !== 'connection') lines.push(`${name}: ${value}`);
    else {
      const kept = tokensOf(value).filter((token) => !OF_UPGRADE.has(token));
      if (kept.length > 0) lines.push(`${name}: ${kept.join(', ')}`);
    }
  }
  // As Node reads them: one byte a character.
  return Buffer.from(`${lines.join('\r\n')}\r\n\r\n`, 'latin1');
}
