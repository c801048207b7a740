import { type Kysely, sql } from 'kysely';
import { OperatorError } from '../operatorError.ts';

interface Fitness {
  readonly encoding: string;
  readonly username: string;
  readonly schema: string | null;
  readonly may_make_tables: boolean | null;
  readonly may_make_schemas: boolean;
}

/**
 * Throws `OperatorError` where an empty database cannot become ours: it keeps text in which not every name can be
 * written, or its user may make nothing in it, as any but the owner since Postgres 15.
 */
export async function refuseUnfit<Schema>(db: Kysely<Schema>): Promise<void> {
  const { rows } = await sql<Fitness>`
    select pg_encoding_to_char(encoding) as encoding, current_user as username, current_schema() as schema,
      has_schema_privilege(current_schema(), 'create') as may_make_tables,
      has_database_privilege(current_database(), 'create') as may_make_schemas
    from pg_database where datname = current_database()`.execute(db);
  const [{ encoding, username, schema, may_make_tables: mayMakeTables, may_make_schemas: mayMakeSchemas }] =
    rows;
  if (encoding !== 'UTF8')
    throw new OperatorError(`The database keeps its text as ${encoding}: make one with the encoding UTF8.`);
  if (schema === null)
    throw new OperatorError(
      `There is no schema that the database user ${username} makes tables in: look at its search_path.`,
    );
  if (mayMakeTables !== true || !mayMakeSchemas)
    throw new OperatorError(
      `The database user ${username} may not make ${mayMakeTables === true ? 'schemas in the database' : `tables in the schema ${schema}`}: let it own the database, or grant it create on both.`,
    );
}
