import { z } from 'zod';

/**
 * A backup is a gzip-compressed tar archive:
 *
 *     backup.json                    what was backed up, and in which schema
 *     tables/<table>/<part>.copy     its rows in the text form of Postgres's COPY, cut into parts
 *     digests.json                   rows, bytes and SHA-256 of each table, at the end
 */
export const FIRST_ENTRY = 'backup.json';
export const LAST_ENTRY = 'digests.json';
export const FORMAT_VERSION = 1;

export const BackupHead = z.strictObject({
  format: z.literal('slideload-backup'),
  version: z.literal(FORMAT_VERSION, { error: 'is of another version than this program reads' }),
  madeAt: z.iso.datetime(),
  /** Names of the migrations that the schema had. */
  migrations: z.array(z.string()).min(1),
  tables: z.array(
    z.strictObject({
      name: z.string(),
      columns: z.array(z.string()).min(1),
      order: z.array(z.string()).min(1),
      rows: z.int().min(0),
    }),
  ),
  /** Months whose samples have a partition of their own. */
  traceMonths: z.array(z.string().regex(/^\d{4}-\d{2}$/)),
});
export type BackupHead = z.infer<typeof BackupHead>;

const TableDigest = z.strictObject({
  rows: z.int().min(0),
  bytes: z.int().min(0),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
});
export type TableDigest = z.infer<typeof TableDigest>;

export const BackupDigests = z.record(z.string(), TableDigest);
export type BackupDigests = z.infer<typeof BackupDigests>;

export function partName(table: string, part: number): string {
  return `tables/${table}/${String(part).padStart(6, '0')}.copy`;
}

/** Null for an entry that is no part of a table. */
export function tableOfPart(name: string): string | null {
  return /^tables\/([a-z0-9_]+)\/\d+\.copy$/.exec(name)?.[1] ?? null;
}
