import { setTimeout as pause } from 'node:timers/promises';

/** Waits so long, or until it is to stop. */
export async function rest(ms: number, stopping: AbortSignal): Promise<void> {
  await pause(ms, null, { signal: stopping }).catch((error: unknown) => {
    if (!stopping.aborted) throw error;
  });
}
