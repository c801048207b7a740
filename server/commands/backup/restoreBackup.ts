import { once } from 'node:events';
import type { Writable } from 'node:stream';
import { finished } from 'node:stream/promises';
import type { ClientBase } from 'pg';
import { from as copyFrom, to as copyTo } from 'pg-copy-streams';
import { ensureTraceMonth } from '../../../ingest/tracePartitions.ts';
import { migrate, migrateTo, unknownAmong } from '../../database/migrate.ts';
import type { Database } from '../../database/openDatabase.ts';
import { OperatorError } from '../../operatorError.ts';
import type { Progress } from '../progress.ts';
import { copyIn, copyOut, quoted } from '../tables.ts';
import { checkBackup } from './checkBackup.ts';
import { differenceOf, RowDigest } from './digest.ts';
import type { BackupDigests, BackupHead } from './format.ts';
import { readArchive } from './readArchive.ts';
import { readSameText } from './readSameText.ts';

/**
 * Puts a backup into an empty database, all or nothing: the schema as it was, every row, then what has changed in the
 * schema since. The rows are read out again and compared with what was backed up before anything is kept.
 */
export async function restoreBackup(
  database: Database,
  file: string,
  progress: Progress,
): Promise<BackupDigests> {
  try {
    const { head, digests } = await checkBackup(file, progress);
    refuseNewer(head);
    const { pool } = database;
    const client = await pool.connect();
    try {
      await refuseFull(client);
      await migrateTo(database, head.migrations);
      for (const month of head.traceMonths) await ensureTraceMonth(pool, new Date(`${month}-01T00:00:00Z`));
      await client.query('begin');
      await readSameText(client);
      await guardRows(client, head, false);
      await fill(client, file, head, progress);
      await guardRows(client, head, true);
      await compare(client, head, digests, progress);
      await client.query('commit');
    } catch (error) {
      // A connection that is lost has rolled back by itself; what it was lost of is what is to be told.
      await client.query('rollback').catch(() => undefined);
      throw error;
    } finally {
      client.release();
    }
    await migrate(database);
    return digests;
  } finally {
    progress.end();
  }
}

function refuseNewer({ migrations }: BackupHead): void {
  const unknown = unknownAmong(migrations);
  if (unknown !== undefined)
    throw new OperatorError(
      `It is of a newer program, with the migration "${unknown}": restore it with that.`,
    );
}

/** A backup is never mixed with what is there. */
async function refuseFull(client: ClientBase): Promise<void> {
  const { rows } = await client.query<{ known: boolean }>(
    "select to_regclass('accounts') is not null as known",
  );
  if (!rows[0].known) return;
  const found = await client.query('select from accounts limit 1');
  if (found.rowCount !== 0)
    throw new OperatorError('The database is in use already: restore into an empty one.');
}

/**
 * Guards the rows again, or not for as long as it takes: Postgres copies into no table that it holds us to row-level
 * security on, and what is restored is no new act for the record. A table of before it was guarded stays as it is.
 */
async function guardRows(client: ClientBase, { tables }: BackupHead, guarded: boolean): Promise<void> {
  const { rows } = await client.query<{ name: string; locked: boolean }>(
    'select relname as name, relrowsecurity as locked from pg_class where oid = any ($1::text[]::regclass[])',
    [tables.map(({ name }) => quoted(name))],
  );
  for (const { name, locked } of rows) {
    await client.query(`alter table ${quoted(name)} ${guarded ? 'enable' : 'disable'} trigger user`);
    if (locked)
      await client.query(`alter table ${quoted(name)} ${guarded ? '' : 'no '}force row level security`);
  }
}

async function fill(client: ClientBase, file: string, head: BackupHead, progress: Progress): Promise<void> {
  progress.begin('Restoring rows', total(head));
  let open: { readonly table: string; readonly stream: Writable } | null = null;
  const close = async (): Promise<void> => {
    if (open === null) return;
    open.stream.end();
    await finished(open.stream);
    open = null;
  };
  const counts = new Map(head.tables.map(({ name }) => [name, new RowDigest()]));
  await readArchive(file, {
    head: async () => undefined,
    rows: async (name, piece) => {
      if (open?.table !== name) {
        await close();
        const table = head.tables.find((one) => one.name === name);
        if (table === undefined) throw new OperatorError(`It has rows of ${name}, which it does not name.`);
        open = { table: name, stream: client.query(copyFrom(copyIn(table))) };
      }
      progress.add(counts.get(name)?.take(piece) ?? 0);
      if (!open.stream.write(piece)) await once(open.stream, 'drain');
    },
  });
  await close();
}

async function compare(
  client: ClientBase,
  head: BackupHead,
  digests: BackupDigests,
  progress: Progress,
): Promise<void> {
  progress.begin('Comparing', total(head));
  for (const table of head.tables) {
    const digest = new RowDigest();
    for await (const piece of client.query(copyTo(copyOut(table)))) progress.add(digest.take(piece));
    const difference = differenceOf(table.name, digests[table.name], digest.end());
    if (difference !== null)
      throw new OperatorError(`What was restored is not what was backed up: ${difference}.`);
  }
}

function total({ tables }: BackupHead): number {
  return tables.reduce((rows, table) => rows + table.rows, 0);
}
