import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, readlinkSync } from 'node:fs';
import { codeOf } from '../../../ingest/errorCode.ts';

/** Whether a process with this number runs, ours or not. One that ended and was not yet collected does not. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    // Anything but "no such process" means that there is one.
    if (codeOf(error) === 'ESRCH') return false;
  }
  return statusOf(pid)[0] !== 'Z';
}

/**
 * What tells a process from a later one with the same number: the machine's boot and the process's start, where the
 * system tells them; else the number alone must do.
 */
export function identityOf(pid: number): string {
  const boot = readOr('/proc/sys/kernel/random/boot_id', '').trim();
  return `${pid} ${boot} ${statusOf(pid)[19] ?? ''}`.trim();
}

/** The fields after the process's name, which may itself hold blanks: state first, start 20th (proc(5)). */
function statusOf(pid: number): string[] {
  return readOr(`/proc/${pid}/stat`, '').split(') ').at(-1)?.split(' ') ?? [];
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
