import { readConfiguration } from '../configuration.ts';
import { type Database, openDatabase, WITHOUT_LIMITS } from '../database/openDatabase.ts';
import { plainOwnerUrl } from '../database/plainOwner.ts';
import { reachDatabase } from '../database/reachDatabase.ts';
import { reachDatabaseOf } from './reachDatabase.ts';

const CONNECTIONS = 4;

/** Does something with the installation's database and leaves it as it was found: running or stopped. */
export async function withDatabase<Result>(
  environment: NodeJS.ProcessEnv,
  act: (database: Database) => Promise<Result>,
): Promise<Result> {
  const { url, leave } = await reachDatabaseOf(readConfiguration(environment));
  try {
    const held = await reachDatabase(() => plainOwnerUrl(url, console.error));
    const database = openDatabase(held, CONNECTIONS, {
      patience: WITHOUT_LIMITS,
      itsOwn: { spanning: 'commands' },
    });
    try {
      return await act(database);
    } finally {
      await database.pool.end();
    }
  } finally {
    await leave();
  }
}
