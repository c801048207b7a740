import { MIGRATIONS } from '../../../migrations/index.ts';
import { migrationsMade, OLDEST_POSTGRES, unknownAmong } from '../../database/migrate.ts';
import type { Database } from '../../database/openDatabase.ts';
import { attend, broken, type Finding, good } from './finding.ts';

const MOST_CLOCK_DIFFERENCE_S = 5;

/** Version, schema and clock. `usable`: the schema is the one that this program works with. */
export async function examineDatabase(
  { pool, db }: Database,
  now: Date,
): Promise<{ findings: Finding[]; usable: boolean }> {
  const { rows } = await pool.query<{ major: number; settings: string | null; now: Date }>(`
    select current_setting('server_version_num')::integer / 10000 as major, now() as now,
      (select string_agg(name, ', ') from pg_settings
        where name in ('fsync', 'synchronous_commit', 'full_page_writes') and setting = 'off') as settings`);
  const [{ major, settings, now: told }] = rows;
  const findings: Finding[] = [];
  findings.push(
    major < OLDEST_POSTGRES
      ? broken(`Postgres ${major} is too old.`, `Move to Postgres ${OLDEST_POSTGRES} or newer.`)
      : good(`Postgres ${major} answers.`),
  );
  if (settings !== null)
    findings.push(
      broken(`Postgres may lose what was acknowledged: ${settings} off.`, 'Turn it on in its configuration.'),
    );
  findings.push(clock(told, now));
  const schema = examineSchema(await migrationsMade(db));
  return { findings: [...findings, schema], usable: schema.state === 'good' };
}

function clock(told: Date, now: Date): Finding {
  const differenceS = Math.round(Math.abs(told.getTime() - now.getTime()) / 1000);
  if (differenceS <= MOST_CLOCK_DIFFERENCE_S) return good('The clocks of database and service agree.');
  return attend(
    `The clocks of database and service differ by ${differenceS} s.`,
    'Let both follow a time server: sessions and grants end by the database, tokens by the service.',
  );
}

function examineSchema(made: readonly string[]): Finding {
  if (made.length === 0) return attend('The database is empty.', 'The first start makes its tables.');
  const unknown = unknownAmong(made);
  if (unknown !== undefined)
    return broken(`The schema is newer than this program: it has "${unknown}".`, 'Start the newer program.');
  const missing = Object.keys(MIGRATIONS).filter((name) => !made.includes(name));
  if (missing.length === 0) return good('The schema is up to date.');
  return attend(
    `${missing.length} migrations are still to be made.`,
    'The next start makes them; back up first.',
  );
}
