import type { z } from 'zod';
import { OperatorError } from '../../operatorError.ts';
import { readJson } from '../readJson.ts';
import { readAll, readTar } from '../readTar.ts';
import { BackupDigests, BackupHead, FIRST_ENTRY, LAST_ENTRY, tableOfPart } from './format.ts';

interface ArchiveReader {
  /** Called once, before anything else. */
  head(head: BackupHead): Promise<void>;
  /** Called for every piece of a table's rows, table by table in the order of the head. */
  rows(table: string, piece: Buffer): Promise<void>;
}

const LARGEST_JSON_BYTES = 16 * 1024 * 1024;
const COMPLAINTS = { noJson: 'One of its lists is no JSON.', unfit: 'It is no backup of this program' };

/** Reads a backup from its beginning to its end and answers the digests written there. */
export async function readArchive(file: string, reader: ArchiveReader): Promise<BackupDigests> {
  let head: BackupHead | null = null;
  const ending: { digests: BackupDigests | null } = { digests: null };
  await readTar(file, async (name, bytes) => {
    const table = tableOfPart(name);
    if (ending.digests !== null) throw new OperatorError(`It goes on with "${name}" after its end.`);
    if (head === null) {
      if (name !== FIRST_ENTRY) throw new OperatorError(`It does not begin with ${FIRST_ENTRY}.`);
      head = await jsonOf(BackupHead, bytes);
      await reader.head(head);
    } else if (table !== null && head.tables.some((known) => known.name === table)) {
      for await (const piece of bytes) await reader.rows(table, piece);
    } else if (name === LAST_ENTRY) ending.digests = await jsonOf(BackupDigests, bytes);
    else throw new OperatorError(`It holds "${name}", which does not belong there.`);
  });
  if (ending.digests === null) throw new OperatorError('It is cut short: its end is missing.');
  return ending.digests;
}

async function jsonOf<Schema extends z.ZodType>(
  schema: Schema,
  bytes: AsyncIterable<Buffer>,
): Promise<z.infer<Schema>> {
  return readJson(schema, await readAll(bytes, LARGEST_JSON_BYTES), COMPLAINTS);
}
