import type { App } from '../appTypes.ts';
import { accountRoutes } from './account.ts';
import { coachRoutes } from './coaches.ts';
import { grantRoutes } from './grants.ts';
import { invitationRoutes } from './invitations.ts';
import { liveRoutes } from './live.ts';
import { loggerRoutes } from './loggers.ts';
import { openApiRoutes } from './openapi.ts';
import { overviewRoutes } from './overview.ts';
import { passwordResetRoutes } from './passwordResets.ts';
import { peopleRoutes } from './people.ts';
import { personalTokenRoutes } from './personalTokens.ts';
import { recordRoutes } from './record.ts';
import { resultRoutes } from './results.ts';
import { roomRoutes } from './rooms.ts';
import { serviceRoutes } from './services.ts';
import { sessionRoutes } from './session.ts';
import { sessionsRoutes } from './sessions.ts';
import { settingsRoutes } from './settings.ts';
import { setUpRoutes } from './setUp.ts';
import { strokeResultRoutes } from './strokeResults.ts';
import { strokeRoutes } from './strokes.ts';
import { type StrokesLiveOptions, strokesLiveRoutes } from './strokesLive.ts';
import { strokesPreviewRoutes } from './strokesPreview.ts';
import { warningRoutes } from './warnings.ts';
import { webhookRoutes } from './webhooks.ts';

interface ApiOptions extends StrokesLiveOptions {
  readonly webhooksToPrivate?: boolean;
}

/** Every route of the API, by thing. */
export async function apiRoutes(app: App, options: ApiOptions): Promise<void> {
  // What one caller may see must not be kept for another by anything in between.
  app.addHook('onRequest', async (_request, reply) => {
    reply.header('cache-control', 'no-store');
  });
  await app.register(openApiRoutes);
  await app.register(sessionRoutes);
  await app.register(sessionsRoutes);
  await app.register(settingsRoutes);
  await app.register(personalTokenRoutes);
  await app.register(passwordResetRoutes);
  await app.register(setUpRoutes);
  await app.register(peopleRoutes);
  await app.register(grantRoutes);
  await app.register(invitationRoutes);
  await app.register(accountRoutes);
  await app.register(recordRoutes);
  await app.register(webhookRoutes, { toPrivate: options.webhooksToPrivate ?? false });
  await app.register(coachRoutes);
  await app.register(roomRoutes);
  await app.register(loggerRoutes);
  await app.register(serviceRoutes);
  await app.register(strokeRoutes);
  await app.register(strokeResultRoutes);
  await app.register(strokesPreviewRoutes);
  await app.register(resultRoutes);
  await app.register(warningRoutes);
  await app.register(overviewRoutes);
  await app.register(liveRoutes);
  await app.register(strokesLiveRoutes, options);
}
