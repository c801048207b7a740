import { analysisIsThere } from '../analysisIsThere.ts';
import type { App } from '../appTypes.ts';
import { coachRoutes } from './coaches.ts';
import { loggerRoutes } from './loggers.ts';
import { openApiRoutes } from './openapi.ts';
import { roomRoutes } from './rooms.ts';
import { serviceRoutes } from './services.ts';
import { sessionRoutes } from './session.ts';
import { setUpRoutes } from './setUp.ts';

/** Every route of the API, by thing. */
export async function apiRoutes(app: App): Promise<void> {
  await app.register(openApiRoutes);
  await app.register(sessionRoutes);
  await app.register(setUpRoutes);
  await app.register(coachRoutes);
  await app.register(roomRoutes);
  await app.register(loggerRoutes);
  await app.register(serviceRoutes);
  if (analysisIsThere) await app.register((await import('./results.ts')).resultRoutes);
}
