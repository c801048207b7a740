import { createReadStream } from 'node:fs';
import { pipeline } from 'node:stream';
import { createGunzip } from 'node:zlib';
import { extract } from 'tar-stream';
import { codeOf } from '../../ingest/errorCode.ts';
import { OperatorError } from '../operatorError.ts';

/**
 * Hands on the entries of a gzip-compressed archive one after the other; what of an entry is not read is passed over.
 * Throws `OperatorError` where the archive cannot be read to its end.
 */
export async function readTar(
  file: string,
  take: (name: string, bytes: AsyncIterable<Buffer>) => Promise<void>,
): Promise<void> {
  const archive = extract();
  // A failure ends the archive with it, which the loop below then throws.
  pipeline(createReadStream(file), createGunzip(), archive, () => undefined);
  let takerFailed: unknown = null;
  try {
    for await (const entry of archive) {
      // Entries are streams of bytes; the library's types do not say so.
      const bytes: AsyncIterable<unknown> = entry;
      await take(entry.header.name, bytes as AsyncIterable<Buffer>).catch((error: unknown) => {
        takerFailed = error;
        throw error;
      });
      // The next entry comes only once this one has been read.
      entry.resume();
    }
  } catch (error) {
    if (error === takerFailed && !isOfArchive(error)) throw error;
    const why = error instanceof Error ? error.message : String(error);
    throw new OperatorError(`It cannot be read: ${why}.`, { cause: error });
  }
}

/** Reading an entry's bytes fails with what ails the archive. */
function isOfArchive(error: unknown): boolean {
  return codeOf(error).startsWith('Z_');
}

/** All bytes of one entry. Throws `OperatorError` past `most`. */
export async function readAll(bytes: AsyncIterable<Buffer>, most: number): Promise<Buffer> {
  const pieces: Buffer[] = [];
  let length = 0;
  for await (const piece of bytes) {
    length += piece.length;
    if (length > most) throw new OperatorError(`One of its files is larger than ${most} bytes.`);
    pieces.push(piece);
  }
  return Buffer.concat(pieces);
}
