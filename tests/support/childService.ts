import { type ChildProcess, spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { endedByItself, endWithUs } from './endWithUs.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const STARTS = {
  npm: ['npm', 'start'],
  node: ['node', '--enable-source-maps', 'server/dist/main.mjs'],
} as const;

/** The service as a process of its own, in a process group of its own as a terminal would give it. */
export interface ChildService {
  readonly child: ChildProcess;
  /** The address that it said it is ready at. Fails, with all that it said, when it ends before. */
  readonly ready: Promise<string>;
  readonly exited: Promise<number | null>;
  readonly said: { out: string; err: string };
  /** A signal to npm alone, as a supervisor sends it. */
  signal(signal: NodeJS.Signals): void;
  /** A signal to all of the group, as a terminal sends it. */
  signalGroup(signal: NodeJS.Signals): void;
}

/** Starts it. It ends with whoever starts it at the latest, its embedded Postgres too (`endWithUs.ts`). */
export function startChild(
  environment: Readonly<Record<string, string>>,
  by: keyof typeof STARTS = 'npm',
): ChildService {
  const [command, ...words] = STARTS[by];
  const { ADMIN_EMAIL: _email, ADMIN_PASSWORD: _password, DATABASE_URL: _url, ...inherited } = process.env;
  const child = spawn(command, words, {
    cwd: ROOT,
    env: { ...inherited, NODE_ENV: 'production', PORT: '0', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
    detached: true,
  });
  const said = { out: '', err: '' };
  const exited = new Promise<number | null>((resolve) => child.once('close', resolve));
  const ready = new Promise<string>((resolve, reject) => {
    child.stdout?.on('data', (chunk: Buffer) => {
      said.out += chunk.toString();
      const url = /^ready (http:\S+)$/m.exec(said.out)?.[1];
      if (url !== undefined) resolve(url);
    });
    void exited.then((code) =>
      reject(new Error(`It ended with ${code} before it was ready:\n${said.out}${said.err}`)),
    );
  });
  child.stderr?.on('data', (chunk: Buffer) => {
    said.err += chunk.toString();
  });
  // Whoever waits for it sees the failure; some tests wait for the end alone.
  ready.catch(() => undefined);
  const pid = child.pid;
  if (pid === undefined) throw new Error(`${command} cannot be started.`);
  endWithUs({ group: pid });
  if (environment.DATA_DIR !== undefined) endWithUs({ dataDir: resolve(ROOT, environment.DATA_DIR) });
  // Its output is closed once no process of the group is left that writes to it.
  void exited.then(() => endedByItself(pid));
  return {
    child,
    ready,
    exited,
    said,
    signal: (signal) => child.kill(signal),
    signalGroup: (signal) => process.kill(-pid, signal),
  };
}

/** The service's own process, below npm. */
export async function servicePid(dataDir: string): Promise<number> {
  return Number.parseInt(await readFile(join(dataDir, 'service.pid'), 'utf8'), 10);
}

/** The embedded Postgres's first process; NaN while there is none. */
export async function postmasterPid(dataDir: string): Promise<number> {
  const written = readFile(join(dataDir, 'postgres', 'postmaster.pid'), 'utf8');
  return Number.parseInt(await written.catch(() => ''), 10);
}
