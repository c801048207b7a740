import { OperatorError } from '../../operatorError.ts';
import type { Progress } from '../progress.ts';
import { differenceOf, RowDigest } from './digest.ts';
import type { BackupDigests, BackupHead } from './format.ts';
import { readArchive } from './readArchive.ts';

/** Reads a backup through and compares every table with the digests that it ends with. Throws `OperatorError`. */
export async function checkBackup(
  file: string,
  progress: Progress,
): Promise<{ head: BackupHead; digests: BackupDigests }> {
  const seen = new Map<string, RowDigest>();
  let found: BackupHead | null = null;
  const digests = await readArchive(file, {
    head: async (head) => {
      found = head;
      for (const { name } of head.tables) seen.set(name, new RowDigest());
      progress.begin(
        'Reading it back',
        head.tables.reduce((rows, table) => rows + table.rows, 0),
      );
    },
    rows: async (table, piece) => progress.add(seen.get(table)?.take(piece) ?? 0),
  });
  // `readArchive` answers only after it has read one.
  const head = found as BackupHead | null;
  if (head === null) throw new OperatorError('It has no beginning.');
  for (const [table, digest] of seen) {
    const wanted = digests[table];
    if (wanted === undefined) throw new OperatorError(`It has no digest of ${table}.`);
    const difference = differenceOf(table, wanted, digest.end());
    if (difference !== null) throw new OperatorError(`It is damaged: ${difference}.`);
  }
  return { head, digests };
}
