import { readConfiguration } from '../configuration.ts';
import { isMigrated } from '../database/migrate.ts';
import { type Database, openDatabase, WITHOUT_LIMITS } from '../database/openDatabase.ts';
import { plainOwnerUrl } from '../database/plainOwnerUrl.ts';
import { reachDatabase } from '../database/reachDatabase.ts';
import { OperatorError } from '../operatorError.ts';
import { onInstalledDatabase } from './onInstalledDatabase.ts';

const CONNECTIONS = 4;

/** Does something with the installation's database and leaves it as it was found: running or stopped. */
export function withDatabase<Result>(
  environment: NodeJS.ProcessEnv,
  act: (database: Database) => Promise<Result>,
): Promise<Result> {
  return onInstalledDatabase(readConfiguration(environment), async (url) => {
    const held = await reachDatabase(() => plainOwnerUrl(url, console.error));
    const database = openDatabase(held, CONNECTIONS, {
      patience: WITHOUT_LIMITS,
      itsOwn: { spanning: 'commands' },
    });
    return act(database).finally(() => database.pool.end());
  });
}

/** The same where the schema must be this program's. Throws `OperatorError` where it is not, or not yet. */
export function withInstallation<Result>(
  environment: NodeJS.ProcessEnv,
  act: (database: Database) => Promise<Result>,
): Promise<Result> {
  return withDatabase(environment, async (database) => {
    if (await isMigrated(database.db)) return act(database);
    throw new OperatorError('The database has not the tables of this program yet: start the service once.');
  });
}
