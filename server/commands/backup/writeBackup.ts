import type { ClientBase } from 'pg';
import { to as copyTo } from 'pg-copy-streams';
import { PARTITIONS } from '../../../ingest/tracePartitions.ts';
import { OperatorError } from '../../operatorError.ts';
import { type AddEntry, jsonEntry, writeArchive } from '../archive.ts';
import type { Progress } from '../progress.ts';
import { copyOut, quoted, type TableShape, tablesInOrder } from '../tables.ts';
import { checkBackup } from './checkBackup.ts';
import { RowDigest } from './digest.ts';
import {
  type BackupDigests,
  type BackupHead,
  FIRST_ENTRY,
  FORMAT_VERSION,
  LAST_ENTRY,
  partName,
  type TableDigest,
} from './format.ts';
import { readSameText } from './readSameText.ts';

const PART_BYTES = 4 * 1024 * 1024;

/**
 * Writes every row of one moment into a file, while the service goes on, reads the file back and compares it with what
 * was counted. The file has its name only once it is whole.
 */
export async function writeBackup(
  client: ClientBase,
  file: string,
  now: Date,
  progress: Progress,
): Promise<BackupDigests> {
  try {
    await client.query('begin isolation level repeatable read, read only');
    await readSameText(client);
    const head = await headOf(client, now);
    progress.begin('Writing rows', sum(head.tables.map(({ rows }) => rows)));
    return await writeArchive(
      file,
      (add) => writeTables(client, head, add, progress),
      (unfinished) => checkBackup(unfinished, progress),
    );
  } finally {
    progress.end();
    // Nothing was changed; where the connection is lost, that is told already.
    await client.query('rollback').catch(() => undefined);
  }
}

async function headOf(client: ClientBase, now: Date): Promise<BackupHead> {
  const { rows } = await client.query<{ known: boolean }>(
    "select to_regclass('kysely_migration') is not null as known",
  );
  if (!rows[0].known) throw new OperatorError('The database is empty: there is nothing to back up.');
  const { rows: migrations } = await client.query<{ name: string }>(
    'select name from kysely_migration order by name',
  );
  const tables = [];
  for (const { name, columns, order } of await tablesInOrder(client)) {
    const counted = await client.query<{ rows: number }>(
      `select count(*)::double precision as rows from ${quoted(name)}`,
    );
    tables.push({ name, columns: [...columns], order: [...order], rows: counted.rows[0].rows });
  }
  const { rows: months } = await client.query<{ month: string }>(`
    select replace(substring(c.relname from 8), '_', '-') as month from ${PARTITIONS} order by 1`);
  return {
    format: 'slideload-backup',
    version: FORMAT_VERSION,
    madeAt: now.toISOString(),
    migrations: migrations.map(({ name }) => name),
    tables,
    traceMonths: months.map(({ month }) => month),
  };
}

async function writeTables(
  client: ClientBase,
  head: BackupHead,
  add: AddEntry,
  progress: Progress,
): Promise<BackupDigests> {
  const digests: BackupDigests = {};
  await add(FIRST_ENTRY, jsonEntry(head));
  for (const table of head.tables) {
    const digest = await writeTable(client, table, add, progress);
    if (digest.rows !== table.rows)
      throw new OperatorError(`${table.name} has ${table.rows} rows, and ${digest.rows} were written.`);
    digests[table.name] = digest;
  }
  await add(LAST_ENTRY, jsonEntry(digests));
  return digests;
}

async function writeTable(
  client: ClientBase,
  table: TableShape,
  add: AddEntry,
  progress: Progress,
): Promise<TableDigest> {
  const digest = new RowDigest();
  const rows = client.query(copyTo(copyOut(table)));
  let pieces: Buffer[] = [];
  let bytes = 0;
  let part = 0;
  const flush = async () => {
    if (bytes > 0) await add(partName(table.name, part++), Buffer.concat(pieces));
    pieces = [];
    bytes = 0;
  };
  for await (const piece of rows) {
    progress.add(digest.take(piece));
    pieces.push(piece);
    bytes += piece.length;
    if (bytes >= PART_BYTES) await flush();
  }
  await flush();
  return digest.end();
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}
