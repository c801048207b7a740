import type { TestProject } from 'vitest/node';
import { buildIfStale } from '../../server/build.ts';
import { migrate } from '../../server/database/migrate.ts';
import { openDatabase } from '../../server/database/openDatabase.ts';
import { plainOwnerUrl } from '../../server/database/plainOwnerUrl.ts';
import { prepareQueue } from '../../server/work/jobs/queue.ts';
import { createDatabase } from './databases.ts';
import { startTestPostgres } from './testPostgres.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The server that every test file makes its own database on. */
    postgresUrl: string;
    /** A database of that server, migrated and empty, to make copies of. */
    postgresTemplate: string;
  }
}

/** Builds the service where that is due, starts one Postgres for all test files and migrates one database, which each file then copies. */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  // Tests that start the service as a process of its own start what was built.
  await buildIfStale();
  const postgres = await startTestPostgres();
  const template = await createDatabase(postgres.url);
  const database = openDatabase(await plainOwnerUrl(template.url, console.error), 2);
  await migrate(database);
  await prepareQueue(database.pool);
  // Kysely ends a pool only where it was asked something itself.
  await database.pool.end();
  project.provide('postgresUrl', postgres.url);
  project.provide('postgresTemplate', new URL(template.url).pathname.slice(1));
  return async () => {
    await template.drop();
    await postgres.stop();
  };
}
