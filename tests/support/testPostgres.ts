import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startEmbeddedPostgres } from '../../server/database/embedded/startEmbeddedPostgres.ts';
import { endWithUs } from './endWithUs.ts';

export interface TestPostgres {
  readonly url: string;
  stop(): Promise<void>;
}

/** Tests lose nothing by a power cut. */
const FAST = {
  fsync: 'off',
  synchronous_commit: 'off',
  full_page_writes: 'off',
  max_connections: '300',
};

/** The server that `TEST_DATABASE_URL` names, one in a container with `TEST_DATABASE=container`, else our own. */
export async function startTestPostgres(): Promise<TestPostgres> {
  const named = process.env.TEST_DATABASE_URL;
  if (named !== undefined && named !== '') return { url: named, stop: async () => undefined };
  if (process.env.TEST_DATABASE === 'container') {
    const container = await startContainer();
    if (container !== null) return container;
  }
  return startOwn();
}

async function startOwn(): Promise<TestPostgres> {
  // A run that is asked to end ends its server in good order.
  process.once('SIGTERM', () => process.exit(1));
  const folder = await mkdtemp(join(tmpdir(), 'slideload-tests-'));
  endWithUs({ dataDir: folder });
  const postgres = await startEmbeddedPostgres(folder, { settings: FAST });
  return {
    url: postgres.url,
    stop: async () => {
      await postgres.stop();
      await rm(folder, { recursive: true });
    },
  };
}

/** Null, and said aloud, where there is no Docker. */
async function startContainer(): Promise<TestPostgres | null> {
  const { PostgreSqlContainer } = await import('@testcontainers/postgresql');
  const { getContainerRuntimeClient } = await import('testcontainers');
  const missing = await getContainerRuntimeClient().then(
    () => null,
    (error: unknown) => String(error),
  );
  if (missing !== null) {
    console.warn(
      `TEST_DATABASE=container is skipped, the embedded Postgres is used: no Docker (${missing}).`,
    );
    return null;
  }
  const words = Object.entries(FAST).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
  const image = process.env.TEST_DATABASE_IMAGE ?? 'postgres:15';
  const container = await new PostgreSqlContainer(image).withCommand(['postgres', ...words]).start();
  return {
    url: container.getConnectionUri(),
    stop: async () => {
      await container.stop();
    },
  };
}
