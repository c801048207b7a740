import { setTimeout as pause } from 'node:timers/promises';
import { type Answer, type RequestOptions, sendRequest } from '../support/request.ts';

/** Somebody who asks the service: where it may be asked at this moment, and by which token. */
export interface Caller {
  readonly url: () => string;
  readonly token: string;
}

const AGAIN_AFTER_MS = 100;

/**
 * Asks until there is an answer that is none of a trouble that passes: a process that died, a database that is away.
 * What it asks must do no harm when it is asked twice.
 */
export async function insist(
  caller: Caller,
  method: string,
  path: string,
  options: RequestOptions = {},
): Promise<Answer> {
  for (;;) {
    const answer = await tryOnce(caller, method, path, options);
    if (answer !== null && answer.status !== 503) return answer;
    await pause(AGAIN_AFTER_MS);
  }
}

/** Null where nobody answered: the process died, or was not there. */
export function tryOnce(
  { url, token }: Caller,
  method: string,
  path: string,
  options: RequestOptions = {},
): Promise<Answer | null> {
  return sendRequest(url(), method, path, { token, ...options }).catch((error: unknown) => {
    // What `fetch` says of a connection that was refused or lost; anything else is a fault of ours.
    if (error instanceof TypeError) return null;
    throw error;
  });
}
