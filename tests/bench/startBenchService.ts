import { once } from 'node:events';
import { buildIfStale } from '../../server/build.ts';
import { startChild as startService } from '../support/childService.ts';
import type { Child } from './childProcess.ts';

/** The service as people start it, worker included, on an empty database. Answers it with its address, `said.url`. */
export async function startBenchService(databaseUrl: string): Promise<Child> {
  await buildIfStale();
  const { child, ready } = startService(
    {
      DATABASE_URL: databaseUrl,
      ADMIN_EMAIL: 'bench@example.com',
      ADMIN_PASSWORD: 'a long enough secret',
    },
    'node',
  );
  return {
    said: { url: await ready },
    process: child,
    stop: async () => {
      child.kill('SIGKILL');
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
    },
  };
}
