import { z } from 'zod';
import type { App } from '../appTypes.ts';
import { isMigrated } from '../database/migrate.ts';
import { ProblemError } from '../problems.ts';
import { within } from '../within.ts';

const Health = z.object({ status: z.literal('ok') });
const ASK_WITHIN_MS = 3000;

/** Whether the process serves, and whether its database does too. */
export async function healthRoutes(app: App): Promise<void> {
  app.get(
    '/healthz',
    { schema: { response: { 200: Health } }, config: { access: 'public' }, logLevel: 'silent' },
    async () => ({ status: 'ok' }) as const,
  );

  app.get(
    '/readyz',
    { schema: { response: { 200: Health } }, config: { access: 'public' }, logLevel: 'silent' },
    async () => {
      if (!(await isReady(app))) throw new ProblemError('unavailable', 'The database is not ready.');
      return { status: 'ok' } as const;
    },
  );
}

/** False also when the database does not answer in time. */
function isReady(app: App): Promise<boolean> {
  const asked = isMigrated(app.database.db).catch((error: unknown) => {
    app.log.warn({ err: error }, 'the database is not ready');
    return false;
  });
  return within(ASK_WITHIN_MS, asked, false);
}
