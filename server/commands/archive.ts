import { createWriteStream } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { pack } from 'tar-stream';

/** Adds one file to an archive. */
export type AddEntry = (name: string, body: Buffer) => Promise<void>;

/**
 * Writes a gzip-compressed tar archive, readable by its owner alone. The file has its name only once it is whole, on
 * the disk and past `check`; whatever fails leaves nothing behind.
 */
export async function writeArchive<Result>(
  file: string,
  fill: (add: AddEntry) => Promise<Result>,
  check: (unfinished: string) => Promise<unknown> = async () => undefined,
): Promise<Result> {
  const unfinished = `${file}.unfinished`;
  const archive = pack();
  /** What ails the file itself: whoever fills the archive then only sees that it is closed. */
  let broken: unknown = null;
  const written = pipeline(archive, createGzip(), createWriteStream(unfinished, { mode: 0o600 }));
  written.catch((error: Error) => {
    broken = error;
    archive.destroy(error);
  });
  try {
    const result = await fill((name, body) => addEntry(archive, name, body));
    archive.finalize();
    await written;
    await reachDisk(unfinished);
    await check(unfinished);
    await rename(unfinished, file);
    return result;
  } catch (error) {
    const reason = broken ?? error;
    archive.destroy();
    await rm(unfinished, { force: true });
    throw reason;
  }
}

export function jsonEntry(value: unknown): Buffer {
  return Buffer.from(`${JSON.stringify(value, null, 1)}\n`);
}

function addEntry(archive: ReturnType<typeof pack>, name: string, body: Buffer): Promise<void> {
  return new Promise((resolve, reject) => {
    archive.entry({ name, size: body.length }, body, (error) => (error ? reject(error) : resolve()));
  });
}

/** What the next power cut takes was not written. */
async function reachDisk(path: string): Promise<void> {
  const handle = await open(path, 'r');
  await handle.sync().finally(() => handle.close());
}
