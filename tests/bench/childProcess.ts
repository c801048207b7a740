import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

export interface Child {
  /** The first line that it printed, as JSON. */
  readonly said: Readonly<Record<string, string | number>>;
  readonly process: ChildProcess;
  stop(): Promise<void>;
}

/** Starts a program of this folder with tsx and waits for its first line. */
export async function startChild(file: string, environment: Record<string, string>): Promise<Child> {
  const path = fileURLToPath(new URL(file, import.meta.url));
  const child = spawn(process.execPath, ['--import', 'tsx', path], {
    env: { ...process.env, ...environment },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const [line] = await once(createInterface({ input: child.stdout }), 'line');
  return {
    said: JSON.parse(line),
    process: child,
    stop: async () => {
      child.kill('SIGKILL');
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
    },
  };
}
