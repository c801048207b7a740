import { setTimeout as sleep } from 'node:timers/promises';
import { codeOf } from '../../ingest/errorCode.ts';
import { isUnavailable } from '../../ingest/unavailable.ts';
import { databaseUnusable } from './reachDatabase.ts';

const FIRST_WAIT_MS = 250;
const LONGEST_WAIT_MS = 5000;

/** A user, a password or a database that is not there is a wrong URL; so is a file that it names and that is not there. */
const IS_WRONG = /^(28|3D)/;

/**
 * The first question of a start, asked until the database can be reached: machines come up in any order. Throws
 * `OperatorError` with one clear line where the URL itself is wrong, and an `AbortError` once `signal` says to end.
 */
export async function awaitDatabase<Answer>(
  ask: () => Promise<Answer>,
  say: (line: string) => Promise<void>,
  signal: AbortSignal,
): Promise<Answer> {
  let hasSaid = false;
  for (let waitMs = FIRST_WAIT_MS; ; waitMs = Math.min(2 * waitMs, LONGEST_WAIT_MS)) {
    try {
      return await ask();
    } catch (cause) {
      const error = databaseUnusable(cause);
      if (!mayComeUp(cause)) throw error;
      if (!hasSaid) await say(`${error.message} Trying again until it can.`);
      hasSaid = true;
      await sleep(waitMs, undefined, { signal });
    }
  }
}

function mayComeUp(error: unknown): boolean {
  const isOfFile = error instanceof Error && 'syscall' in error && error.syscall === 'open';
  return isUnavailable(error) && !isOfFile && !IS_WRONG.test(codeOf(error));
}
