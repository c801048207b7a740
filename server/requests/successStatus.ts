import type { RouteOptions } from 'fastify';
import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The status of an answer to a request that succeeds; 200 where it is left out. */
    success?: number;
  }
}

/** A request that succeeds is answered with the status that the route's schema describes: no handler says it again. */
export const successStatus = fp(async (app: App) => {
  app.addHook('onRoute', (route) => {
    const success = successOf(route);
    if (success !== undefined) route.config = { ...route.config, success };
  });
  app.addHook('preHandler', async ({ routeOptions }, reply) => {
    const { success } = routeOptions.config;
    if (success !== undefined) reply.code(success);
  });
});

/** The only one below 300; undefined where a route describes none, or opens a WebSocket. */
function successOf({ schema }: RouteOptions): number | undefined {
  const described = Object.keys(Object(schema?.response)).map(Number);
  return described.find((status) => status >= 200 && status < 300);
}
