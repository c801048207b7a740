import { type ChildProcess, spawn } from 'node:child_process';
import { closeSync, openSync } from 'node:fs';
import { readFile, rename, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { ifThere } from '../../ifThere.ts';
import { OperatorError } from '../../operatorError.ts';
import type { Cluster } from './cluster.ts';
import { postgresProcessesIn } from './processes.ts';
import { commandLine, type RunAs } from './runAs.ts';

const LOOK_EVERY_MS = 25;
const READY_WITHIN_MS = 60_000;
/** How long clients may take to leave by themselves: ours are closing their connections as the server is told to stop. */
const CLIENTS_LEAVE_WITHIN_MS = 1500;
/** A fast shutdown writes a checkpoint; past this it is ended at once, and the next start recovers. */
const STOP_WITHIN_MS = 6000;
const LONGEST_LOG_BYTES = 10 * 1024 * 1024;

/** One running server process. */
export interface Postmaster {
  readonly pid: number;
  /** Fulfilled when the process has ended, for whatever reason. */
  readonly ended: Promise<void>;
  stop(): Promise<void>;
  /** Asks for a fast shutdown and does not wait for it. */
  interrupt(): void;
}

/**
 * Starts the server and waits until it takes connections. It leads a process group of its own, so that a terminal's
 * Ctrl-C reaches it only through us, and logs to a file, so that it outlives us unharmed should we be killed.
 */
export async function startPostmaster(
  way: RunAs,
  program: string,
  cluster: Cluster,
  settings: Readonly<Record<string, string>>,
): Promise<Postmaster> {
  await turnLog(cluster.log);
  const log = openSync(cluster.log, 'a', 0o600);
  const words = ['-D', cluster.folder];
  for (const [name, value] of Object.entries(settings)) words.push('-c', `${name}=${value}`);
  const child = spawn(...commandLine(way, program, words), {
    ...way.options,
    stdio: ['ignore', log, log],
    detached: true,
    cwd: '/',
  });
  closeSync(log);
  const ended = new Promise<void>((resolve) => {
    child.once('exit', () => resolve());
    child.once('error', () => resolve());
  });
  await untilReady(child, cluster);
  const pid = child.pid;
  if (pid === undefined) throw new OperatorError(`Postgres did not start: see ${cluster.log}`);
  return { pid, ended, stop: () => stop(child, ended), interrupt: () => child.kill('SIGINT') };
}

async function untilReady(child: ChildProcess, cluster: Cluster): Promise<void> {
  const deadline = performance.now() + READY_WITHIN_MS;
  while (performance.now() < deadline) {
    if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null)
      throw new OperatorError(`Postgres did not start: ${await lastLine(cluster.log)} (${cluster.log})`);
    // Its first line is the process, its eighth the state (Postgres source, src/include/utils/pidfile.h).
    const lines = await pidFile(cluster.folder);
    if (Number(lines[0]) === child.pid && lines[7]?.trim() === 'ready') return;
    await wait(LOOK_EVERY_MS);
  }
  child.kill('SIGQUIT');
  throw new OperatorError(`Postgres was not ready within ${READY_WITHIN_MS / 1000} s: see ${cluster.log}`);
}

/** A smart, then a fast, then an immediate shutdown, as the Postgres manual calls them (section "Shutting Down"). */
async function stop(child: ChildProcess, ended: Promise<void>): Promise<void> {
  child.kill('SIGTERM');
  const timers = [
    setTimeout(() => child.kill('SIGINT'), CLIENTS_LEAVE_WITHIN_MS),
    setTimeout(() => child.kill('SIGQUIT'), STOP_WITHIN_MS),
  ];
  await ended;
  for (const timer of timers) clearTimeout(timer);
}

/**
 * Ends in good order what an earlier service left running when it was killed. Forgets a lock file whose process is not a Postgres
 * at work here: after a restart of the machine its number may be anybody's.
 */
export async function endOrphans(cluster: Pick<Cluster, 'folder'>): Promise<void> {
  const pid = Number((await pidFile(cluster.folder))[0]) || null;
  const working = postgresProcessesIn(cluster.folder, pid);
  if (working.length === 0) {
    // Also where that process is dead but not yet collected: Postgres would still take it for a living one.
    if (pid !== null)
      await rename(join(cluster.folder, 'postmaster.pid'), join(cluster.folder, 'postmaster.pid.stale'));
    return;
  }
  if (pid !== null && working.includes(pid)) process.kill(pid, 'SIGINT');
  const deadline = performance.now() + STOP_WITHIN_MS;
  while (postgresProcessesIn(cluster.folder, pid).length > 0) {
    if (performance.now() > deadline && pid !== null && working.includes(pid)) process.kill(pid, 'SIGQUIT');
    if (performance.now() > deadline + STOP_WITHIN_MS)
      throw new OperatorError(
        `Another Postgres (process ${working[0]}) works in ${cluster.folder} and does not end.`,
      );
    await wait(LOOK_EVERY_MS);
  }
}

/** The lines of the file by which a server says that it works in a folder; none where there is no such file. */
export async function pidFile(folder: string): Promise<string[]> {
  const text = await ifThere(readFile(join(folder, 'postmaster.pid'), 'utf8'));
  return text?.split('\n') ?? [];
}

async function turnLog(log: string): Promise<void> {
  const found = await ifThere(stat(log));
  if (found !== null && found.size > LONGEST_LOG_BYTES) await rename(log, `${log}.1`);
}

async function lastLine(log: string): Promise<string> {
  return (await readFile(log, 'utf8')).trim().split('\n').at(-1) ?? '';
}
