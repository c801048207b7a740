import type { Configuration } from '../../configuration.ts';
import { openDatabase } from '../../database/openDatabase.ts';
import { reachDatabase } from '../../database/reachDatabase.ts';
import { onInstalledDatabase } from '../onInstalledDatabase.ts';
import { examineDatabase } from './database.ts';
import { examineDataFolder, holdsDatabase } from './dataFolder.ts';
import { broken, type Finding } from './finding.ts';
import { examineProgram } from './program.ts';
import { examineTelling } from './telling.ts';
import { examineWork } from './work.ts';

const CONNECTIONS = 2;

/** Looks at everything in turn; what cannot be reached is one finding, and the rest of it is left out. */
export async function examine(configuration: Configuration, now: Date): Promise<Finding[]> {
  const findings = [...(await examineProgram())];
  if (configuration.databaseUrl === null) {
    findings.push(...(await examineDataFolder(configuration.dataDir)));
    // To reach an embedded Postgres is to make one where there is none.
    if (!holdsDatabase(configuration.dataDir)) return findings;
  }
  try {
    await onInstalledDatabase(configuration, async (url) => {
      const database = openDatabase(url, CONNECTIONS, { itsOwn: { spanning: 'commands' } });
      const { pool } = database;
      try {
        await reachDatabase(() => pool.query('select 1'));
        const { findings: ofDatabase, usable } = await examineDatabase(database, now);
        findings.push(...ofDatabase);
        if (usable) findings.push(...(await examineWork(pool)), ...(await examineTelling(pool)));
      } finally {
        await pool.end();
      }
    });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    findings.push(
      broken(`The database cannot be used: ${why}`, 'Check DATABASE_URL, or DATA_DIR and its log.'),
    );
  }
  return findings;
}
