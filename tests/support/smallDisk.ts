import { execFileSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmdirSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const MEBIBYTE = Buffer.alloc(1024 * 1024, 1);
const SMALLEST = 4096;

/** A file system of its own with so little room that it can be filled. */
export interface SmallDisk {
  readonly folder: string;
  /** Takes all the room that is left. */
  fill(): void;
  /** Gives it back. */
  empty(): void;
  unmount(): void;
}

/** In memory (tmpfs). Null where this machine lets nobody mount one, as most do to all but root. */
export function mountSmallDisk(mebibytes: number): SmallDisk | null {
  const folder = mkdtempSync(join(tmpdir(), 'slideload-small-disk-'));
  try {
    const options = ['-t', 'tmpfs', '-o', `size=${mebibytes}m`, 'tmpfs', folder];
    execFileSync('mount', options, { stdio: 'ignore' });
  } catch {
    rmdirSync(folder);
    return null;
  }
  const filler = join(folder, 'filler');
  return {
    folder,
    fill: () => {
      const file = openSync(filler, 'a');
      for (let bytes = MEBIBYTE.length; bytes >= SMALLEST; bytes /= 4) while (takes(file, bytes));
      closeSync(file);
    },
    empty: () => rmSync(filler),
    unmount: () => {
      execFileSync('umount', [folder]);
      rmdirSync(folder);
    },
  };
}

function takes(file: number, bytes: number): boolean {
  try {
    return writeSync(file, MEBIBYTE, 0, bytes) > 0;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOSPC') return false;
    throw error;
  }
}
