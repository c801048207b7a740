import type { App } from '../appTypes.ts';
import { comparisonRoutes } from './comparison.ts';
import { measureRoutes } from './measures.ts';
import { overviewRoutes } from './overview.ts';
import { statusRoutes } from './status.ts';
import { strokeResultRoutes } from './strokeResults.ts';
import { strokeRoutes } from './strokes.ts';
import { strokesPreviewRoutes } from './strokesPreview.ts';
import { trendRoutes } from './trend.ts';
import { warningRoutes } from './warnings.ts';

/** Strokes and all that is made of them. */
export async function resultRoutes(app: App): Promise<void> {
  await app.register(strokeRoutes);
  await app.register(strokeResultRoutes);
  await app.register(strokesPreviewRoutes);
  await app.register(measureRoutes);
  await app.register(trendRoutes);
  await app.register(statusRoutes);
  await app.register(warningRoutes);
  await app.register(comparisonRoutes);
  await app.register(overviewRoutes);
}
