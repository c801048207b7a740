import type { RouteOptions } from 'fastify';
import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';
import { ProblemError } from '../problems.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The route takes WebSockets. */
    socket?: boolean;
  }
}

/**
 * Refuses to make a WebSocket of a request for an address that has none, before anything is upgraded: the library would
 * upgrade it and then close it.
 */
export const refuseUpgrades = fp(async (app: App) => {
  app.addHook('onRoute', (route: RouteOptions) => {
    if (route.wsHandler !== undefined) route.config = { ...route.config, socket: true };
  });
  app.addHook('onRequest', async (request) => {
    if (request.ws && request.routeOptions.config.socket !== true)
      // The library ends the connection with the answer: nothing must be sent on it after this.
      throw new ProblemError('not-found', 'There is no WebSocket at this address.', {
        headers: { connection: 'close' },
      });
  });
});
