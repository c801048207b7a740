import { once } from 'node:events';
import { createServer } from 'node:net';
import { setTimeout as rest } from 'node:timers/promises';
import { codeOf } from '../ingest/errorCode.ts';

const GIVEN_BACK_WITHIN_MS = 3000;
const LOOK_EVERY_MS = 100;

/** Waits for a port that is taken, for a while: a service that is on its way out gives it back. */
export async function awaitPort(port: number, host: string): Promise<void> {
  const latest = performance.now() + GIVEN_BACK_WITHIN_MS;
  while ((await isTaken(port, host)) && performance.now() < latest) await rest(LOOK_EVERY_MS);
}

/** Whatever else is wrong with an address is told where it is listened at. */
async function isTaken(port: number, host: string): Promise<boolean> {
  const server = createServer();
  try {
    await once(server.listen(port, host), 'listening');
    await once(server.close(), 'close');
    return false;
  } catch (error) {
    return codeOf(error) === 'EADDRINUSE';
  }
}
