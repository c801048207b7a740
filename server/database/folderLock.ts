import { randomUUID } from 'node:crypto';
import { link, readFile, rename, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { identityOf, isRunning } from './processes.ts';
import { StartError } from './startError.ts';

const TRIES = 5;

/**
 * Takes a data folder for this process, so that two services cannot share one. A lock whose process is gone counts for
 * nothing. Answers what gives the folder back. Should two starts ever take over the same stale lock at the same moment,
 * Postgres's own lock on its data refuses the second.
 */
export async function lockFolder(folder: string): Promise<() => Promise<void>> {
  const lock = join(folder, 'service.pid');
  const own = identityOf(process.pid);
  for (let tried = 0; tried < TRIES; tried++) {
    const written = join(folder, `service.${randomUUID()}`);
    await writeFile(written, own);
    // A link, unlike a file opened for writing, appears with its content.
    const taken = await link(written, lock).then(
      () => true,
      (error: NodeJS.ErrnoException) => {
        if (error.code === 'EEXIST') return false;
        throw error;
      },
    );
    await unlink(written);
    if (taken) return () => release(lock, own);
    await removeStale(folder, lock);
  }
  throw new StartError(`The data folder ${folder} cannot be locked: remove ${lock}.`);
}

async function removeStale(folder: string, lock: string): Promise<void> {
  const holder = await read(lock);
  if (holder === null) return;
  const pid = Number.parseInt(holder, 10);
  if (pid > 0 && isRunning(pid) && identityOf(pid) === holder)
    throw new StartError(`Another service (process ${pid}) is running on the data folder ${folder}.`);
  const aside = join(folder, `service.${randomUUID()}`);
  await rename(lock, aside).catch(ignoreMissing);
  await unlink(aside).catch(ignoreMissing);
}

async function release(lock: string, own: string): Promise<void> {
  if ((await read(lock)) === own) await unlink(lock).catch(ignoreMissing);
}

async function read(path: string): Promise<string | null> {
  return readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw error;
  });
}

function ignoreMissing(error: NodeJS.ErrnoException): void {
  if (error.code !== 'ENOENT') throw error;
}
