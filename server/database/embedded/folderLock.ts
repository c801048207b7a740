import { randomUUID } from 'node:crypto';
import { link, readFile, rename, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as rest } from 'node:timers/promises';
import { ifThere } from '../../ifThere.ts';
import { OperatorError } from '../../operatorError.ts';
import { identityOf, isRunning } from './processes.ts';

const TRIES = 5;
/** A service that is on its way out stops within ten seconds. */
const HOLDER_ENDS_WITHIN_MS = 10_000;
const LOOK_EVERY_MS = 100;

/**
 * Takes a data folder for this process, so that two services cannot share one. A lock whose process is gone counts for
 * nothing, and one that is on its way out is waited for. Answers what gives the folder back. Should two starts ever take over the same stale lock at the same moment,
 * Postgres's own lock on its data refuses the second.
 */
export async function lockFolder(folder: string): Promise<() => Promise<void>> {
  const lock = lockIn(folder);
  const own = identityOf(process.pid);
  const latest = performance.now() + HOLDER_ENDS_WITHIN_MS;
  for (let tried = 0; tried < TRIES; ) {
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
    const holder = await holderOf(lock);
    if (holder === null) {
      await removeStale(folder, lock);
      tried++;
    } else if (performance.now() < latest) await rest(LOOK_EVERY_MS);
    else
      throw new OperatorError(`Another service (process ${holder}) is running on the data folder ${folder}.`);
  }
  throw new OperatorError(`The data folder ${folder} cannot be locked: remove ${lock}.`);
}

async function removeStale(folder: string, lock: string): Promise<void> {
  const aside = join(folder, `service.${randomUUID()}`);
  await ifThere(rename(lock, aside));
  await ifThere(unlink(aside));
}

async function release(lock: string, own: string): Promise<void> {
  if ((await ifThere(readFile(lock, 'utf8'))) === own) await ifThere(unlink(lock));
}

/** The process of the service that runs on a data folder; null where none does. */
export function serviceOn(folder: string): Promise<number | null> {
  return holderOf(lockIn(folder));
}

async function holderOf(lock: string): Promise<number | null> {
  return livingOf((await ifThere(readFile(lock, 'utf8'))) ?? '');
}

/** The process that wrote a lock, if it is still the one that runs under that number. */
function livingOf(holder: string): number | null {
  const pid = Number.parseInt(holder, 10);
  return pid > 0 && isRunning(pid) && identityOf(pid) === holder ? pid : null;
}

function lockIn(folder: string): string {
  return join(folder, 'service.pid');
}
