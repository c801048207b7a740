import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, readlinkSync } from 'node:fs';

/** Whether a process with this number runs, ours or not. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Anything but "no such process" means that there is one.
    return !(error instanceof Error && 'code' in error && error.code === 'ESRCH');
  }
}

/**
 * What tells a process from a later one with the same number: the machine's boot and the process's start, where the
 * system tells them; else the number alone must do.
 */
export function identityOf(pid: number): string {
  const boot = readOr('/proc/sys/kernel/random/boot_id', '').trim();
  // The name in parentheses may hold blanks; the start is the 20th field after it (proc(5), "starttime").
  const fields = readOr(`/proc/${pid}/stat`, '').split(') ').at(-1)?.split(' ') ?? [];
  return `${pid} ${boot} ${fields[19] ?? ''}`.trim();
}

/** Numbers of the Postgres processes that work in a data folder: each of them has it as its working folder. */
export function postgresProcessesIn(cluster: string, writtenPid: number | null): number[] {
  if (existsSync('/proc/self/cwd'))
    return readdirSync('/proc')
      .filter((name) => /^\d+$/.test(name) && folderOf(name) === cluster)
      .map(Number);
  if (writtenPid === null || !isRunning(writtenPid)) return [];
  const { stdout } = spawnSync('ps', ['-o', 'comm=', '-p', String(writtenPid)], { encoding: 'utf8' });
  return stdout?.includes('postgres') ? [writtenPid] : [];
}

function folderOf(pid: string): string | null {
  try {
    return readlinkSync(`/proc/${pid}/cwd`);
  } catch {
    // Gone meanwhile, or another user's, who cannot be working in our folder.
    return null;
  }
}

function readOr(path: string, otherwise: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    // Not this system's way of telling.
    return otherwise;
  }
}
