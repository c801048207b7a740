import type { App } from '../appTypes.ts';
import { openApiRoutes } from './openapi.ts';
import { sessionRoutes } from './session.ts';
import { setUpRoutes } from './setUp.ts';

/** Every route of the API, by thing. */
export async function apiRoutes(app: App): Promise<void> {
  await app.register(openApiRoutes);
  await app.register(sessionRoutes);
  await app.register(setUpRoutes);
}
