import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Fastify from 'fastify';
import { afterEach, onTestFinished, test, vi } from 'vitest';
import { postgresProcessesIn } from '../../../server/database/embedded/processes.ts';
import { startEmbeddedPostgres } from '../../../server/database/embedded/startEmbeddedPostgres.ts';
import { migrate } from '../../../server/database/migrate.ts';
import { openDatabase } from '../../../server/database/openDatabase.ts';
import { plainOwnerUrl } from '../../../server/database/plainOwnerUrl.ts';
import { prepareQueue } from '../../../server/work/jobs/queue.ts';
import { startWorker } from '../../../server/work/startWorker.ts';
import { postmasterPid } from '../../support/childService.ts';

/** When something is due by the clock: live strokes are tended every five minutes. */
const DUE_MS = Date.UTC(2026, 4, 1, 12, 5);
const EVERY_MS = 5 * 60_000;
const JUST_MS = 20;

afterEach(() => {
  vi.useRealTimers();
});

/** Asks until it is so; the test's own time limit ends it. Vitest's own way of waiting would move the clock. */
async function until(isSo: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await isSo())) await pause(10);
}

test('a time that comes while the database is away ends nothing, and the next one is kept', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'slideload-minute-'));
  const postgres = await startEmbeddedPostgres(folder);
  onTestFinished(async () => {
    await postgres.stop();
    await rm(folder, { recursive: true });
  });
  const database = openDatabase(await plainOwnerUrl(postgres.url, console.error));
  await migrate(database);
  await prepareQueue(database.pool);
  const said: string[] = [];
  const { log } = Fastify({ logger: { level: 'debug', stream: { write: (line) => said.push(line) } } });
  const waitFor = (words: string, after = 0) =>
    until(() => said.slice(after).some((line) => line.includes(words)));

  // The clock stands still just before that time: the queue looks at it again and again.
  vi.useFakeTimers({ toFake: ['Date'] });
  vi.setSystemTime(DUE_MS - JUST_MS);
  const worker = await startWorker({ pool: database.pool, log });
  await waitFor('too early');
  for (const pid of postgresProcessesIn(join(folder, 'postgres'), await postmasterPid(folder)))
    process.kill(pid, 'SIGKILL');
  vi.setSystemTime(DUE_MS + JUST_MS);
  await waitFor('Cron hit an error');

  const next = DUE_MS + EVERY_MS;
  vi.setSystemTime(next - JUST_MS);
  await waitFor('too early', said.length);
  vi.setSystemTime(next + JUST_MS);
  await until(async () => {
    const { rowCount } = await database.pool.query(
      `select from graphile_worker._private_known_crontabs
       where identifier = 'tend-live-strokes' and last_execution >= $1`,
      [new Date(next).toISOString()],
    );
    return rowCount === 1;
  });
  vi.useRealTimers();
  await worker.stop();
  await database.pool.end();
});
