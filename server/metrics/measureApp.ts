import fp from 'fastify-plugin';
import type { App } from '../appTypes.ts';
import { inScope } from '../database/openDatabase.ts';
import { createMetrics, type Metrics } from './metrics.ts';
import { workWaiting } from './workWaiting.ts';

declare module 'fastify' {
  interface FastifyInstance {
    metrics: Metrics;
  }
}

/** Counts what the application answers. Routes are named by their pattern: an address would be another each time. */
export const measureApp = fp(async (app: App) => {
  const { pool } = inScope(app.database, { spanning: 'queue' });
  const metrics = createMetrics(app.database.pool, workWaiting(pool, app.log));
  app.decorate('metrics', metrics);
  app.addHook('onResponse', async (request, reply) => {
    const route = request.is404 ? 'none' : (request.routeOptions.url ?? 'none');
    const status = `${Math.floor(reply.statusCode / 100)}xx`;
    metrics.answered.observe({ method: request.method, route, status }, reply.elapsedTime / 1000);
  });
});
