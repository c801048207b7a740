import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Socket } from 'node:net';
import { fileURLToPath } from 'node:url';

/** One thing that must not outlive whoever started it. */
export type Entrusted =
  /** A process group, by the number of the process that leads it. */
  | { readonly group: number }
  /** The embedded Postgres of a data folder, which leads a group of its own and survives a service that is killed. */
  | { readonly dataDir: string };

/** What this process tells the keeper (`keeper.ts`), a line each. */
export type ToKeeper = Entrusted | { readonly endedGroup: number };

const KEEPER = fileURLToPath(new URL('keeper.ts', import.meta.url));

let keeper: ChildProcess | null = null;

/**
 * Has something ended once this process ends in whatever way, SIGKILL included, or says so by `endLeftovers`. A process
 * beside this one sees to it: it waits for the end of a pipe that nobody else holds open.
 */
export function endWithUs(entrusted: Entrusted): void {
  keeper ??= startKeeper();
  tell(keeper, entrusted);
}

/** A group has ended: its number may soon be another's. */
export function endedByItself(group: number): void {
  if (keeper !== null) tell(keeper, { endedGroup: group });
}

/** Ends what has not ended by now, and waits until it has. Throws where that cannot be done. */
export async function endLeftovers(): Promise<void> {
  if (keeper === null) return;
  const ending = keeper;
  keeper = null;
  ending.ref();
  const exited = once(ending, 'exit');
  ending.stdin?.end();
  const [code] = await exited;
  if (code !== 0) throw new Error(`The keeper of started processes ended with ${code}: some may still run.`);
}

function startKeeper(): ChildProcess {
  const child = spawn(process.execPath, ['--import', 'tsx', KEEPER], {
    stdio: ['pipe', 'ignore', 'inherit'],
    // A terminal's Ctrl-C is not for it: it has to see to what that leaves.
    detached: true,
  });
  // It waits for this process, and not this process for it.
  child.unref();
  // A child's standard input that is a pipe is a socket of Node's.
  (child.stdin as Socket).unref();
  return child;
}

function tell(to: ChildProcess, word: ToKeeper): void {
  to.stdin?.write(`${JSON.stringify(word)}\n`);
}
