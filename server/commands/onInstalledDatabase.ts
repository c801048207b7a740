import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Configuration } from '../configuration.ts';
import { filesIn, urlOf } from '../database/embedded/cluster.ts';
import { serviceOn } from '../database/embedded/folderLock.ts';
import { pidFile } from '../database/embedded/postmaster.ts';
import { startEmbeddedPostgres } from '../database/embedded/startEmbeddedPostgres.ts';
import { ifThere } from '../ifThere.ts';
import { OperatorError } from '../operatorError.ts';

/**
 * Does something with the database that a service with this configuration works on: the one that `DATABASE_URL` names,
 * the embedded one of a service that runs, or the embedded one started for the time being.
 */
export async function onInstalledDatabase<Result>(
  { databaseUrl, dataDir }: Configuration,
  act: (url: string) => Promise<Result>,
): Promise<Result> {
  const url = databaseUrl ?? (await urlOfRunning(resolve(dataDir)));
  if (url !== null) return act(url);
  const postgres = await startEmbeddedPostgres(dataDir);
  return act(postgres.url).finally(() => postgres.stop());
}

/** Null where no service runs on the folder. */
async function urlOfRunning(folder: string): Promise<string | null> {
  const pid = await serviceOn(folder);
  if (pid === null) return null;
  const files = filesIn(folder);
  // The fourth line is the port (Postgres source, src/include/utils/pidfile.h).
  const port = Number((await pidFile(files.folder))[3]);
  const password = await ifThere(readFile(files.passwordFile, 'utf8'));
  if (!(port > 0) || password === null)
    throw new OperatorError(`A service (process ${pid}) runs on ${folder}, but its Postgres is not up yet.`);
  return urlOf(password.trim(), port);
}
