import fastify, { type FastifyServerOptions } from 'fastify';
import { serializerCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import type { App } from './appTypes.ts';
import type { Database } from './database/openDatabase.ts';
import { measureApp } from './metrics/measureApp.ts';
import { answerProblem } from './requests/errorHandler.ts';
import { validateWithZod } from './requests/validation.ts';
import { healthRoutes } from './routes/health.ts';
import { type MetricsOptions, metricsRoutes } from './routes/metrics.ts';

interface WorkerAppOptions extends MetricsOptions {
  readonly logger?: FastifyServerOptions['logger'];
}

/** What a process answers that only works: whether it is well, and what it counts. */
export async function buildWorkerApp(database: Database, options: WorkerAppOptions): Promise<App> {
  const app: App = fastify({
    logger: options.logger ?? false,
    frameworkErrors: answerProblem,
  }).withTypeProvider<ZodTypeProvider>();
  app.decorate('database', database);
  app.setValidatorCompiler(validateWithZod);
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler(answerProblem);
  await app.register(measureApp);
  await app.register(healthRoutes);
  await app.register(metricsRoutes, options);
  return app;
}
