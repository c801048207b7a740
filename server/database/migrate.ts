import { type Kysely, type Migration, Migrator, sql } from 'kysely';
import { MIGRATIONS } from '../../migrations/index.ts';
import type { Tables } from '../../migrations/tables.ts';
import { OperatorError } from '../operatorError.ts';
import { type Database, inScope } from './openDatabase.ts';
import { refuseUnfit } from './refuseUnfit.ts';

/** Any number that nothing else in this database locks: the ASCII of "slide". */
const MIGRATION_LOCK = 0x73_6c_69_64_65;
export const OLDEST_POSTGRES = 15;

/**
 * Brings the schema up to date. Any number of processes may do so at once: one migrates, the others wait. Throws
 * `OperatorError` for a Postgres older than 15, a schema newer than this program or a database that cannot hold it.
 */
export async function migrate(database: Database): Promise<void> {
  await bringTo(database, Object.keys(MIGRATIONS));
}

/**
 * Brings an empty database to an earlier schema: the one that these migrations make. For what is restored from then,
 * to be brought up to date with `migrate` afterwards.
 */
export async function migrateTo(database: Database, names: readonly string[]): Promise<void> {
  await bringTo(database, names);
}

async function bringTo(database: Database, names: readonly string[]): Promise<void> {
  const wanted = Object.fromEntries(Object.entries(PATIENT).filter(([name]) => names.includes(name)));
  const { db } = inScope(database, { spanning: 'migrating' });
  await db.connection().execute(async (connection) => {
    await refuseOldPostgres(connection);
    await waitAsLongAsItTakes(connection, 'session');
    // The lock belongs to this connection, and goes with it should the process die.
    await sql`select pg_advisory_lock(${MIGRATION_LOCK})`.execute(connection);
    try {
      const made = await migrationsMade(connection);
      refuseNewer(made);
      if (made.length === 0) await refuseUnfit(connection);
      const migrator = new Migrator({ db, provider: { getMigrations: async () => wanted } });
      const { error, results } = await migrator.migrateToLatest();
      const failed = results?.find((result) => result.status === 'Error');
      if (error !== undefined)
        throw new Error(`Migration ${failed?.migrationName ?? ''} failed`, { cause: error });
    } finally {
      await sql`select pg_advisory_unlock(${MIGRATION_LOCK})`.execute(connection);
      await sql`reset lock_timeout`.execute(connection);
      await sql`reset statement_timeout`.execute(connection);
    }
  });
}

/** The limits that hold for requests are none for a change of the whole schema, or for waiting while another makes it. */
async function waitAsLongAsItTakes<Schema>(db: Kysely<Schema>, within: 'session' | 'local'): Promise<void> {
  for (const limit of ['lock_timeout', 'statement_timeout']) {
    await sql`set ${sql.raw(within)} ${sql.raw(limit)} = 0`.execute(db);
  }
}

const PATIENT: Record<string, Migration> = Object.fromEntries(
  Object.entries(MIGRATIONS).map(([name, { up }]) => [
    name,
    {
      up: async (db: Kysely<unknown>) => {
        await waitAsLongAsItTakes(db, 'local');
        await up(db);
      },
    },
  ]),
);

/** Whether every migration of this program has been made. */
export async function isMigrated(db: Kysely<Tables>): Promise<boolean> {
  const made = new Set(await migrationsMade(db));
  return Object.keys(MIGRATIONS).every((name) => made.has(name));
}

async function refuseOldPostgres(db: Kysely<Tables>): Promise<void> {
  const { rows } = await sql<{ server_version_num: string }>`show server_version_num`.execute(db);
  const major = Math.floor(Number(rows[0]?.server_version_num) / 10_000);
  if (major < OLDEST_POSTGRES)
    throw new OperatorError(
      `The database is Postgres ${major}: version ${OLDEST_POSTGRES} or newer is needed.`,
    );
}

function refuseNewer(made: readonly string[]): void {
  const unknown = unknownAmong(made);
  if (unknown !== undefined)
    throw new OperatorError(
      `The database is newer than this program: it knows the migration "${unknown}". Start the newer program.`,
    );
}

/** The first that a newer program made; undefined: this one knows them all. */
export function unknownAmong(migrations: readonly string[]): string | undefined {
  return migrations.find((name) => !Object.hasOwn(MIGRATIONS, name));
}

/** Those that the schema has, in their order; none where the database is empty. */
export async function migrationsMade(db: Kysely<Tables>): Promise<string[]> {
  const found = await sql<{ known: boolean }>`
    select to_regclass('kysely_migration') is not null as known`.execute(db);
  if (found.rows[0]?.known !== true) return [];
  const { rows } = await sql<{ name: string }>`select name from kysely_migration order by name`.execute(db);
  return rows.map((row) => row.name);
}
