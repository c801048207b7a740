import { randomInt } from 'node:crypto';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { HOST } from './cluster.ts';

/** Systems give a port from 32768 on, or above, to whoever asks for any and to whoever calls another. */
const FIRST = 10_240;
const END = 32_768;
const TRIES = 100;

/**
 * A port of the loopback interface that nobody holds, and that nobody is given who asks for any: it is taken some time
 * after, and by a server that is started again once more.
 */
export async function quietPort(): Promise<number> {
  for (let tried = 0; ; tried++) {
    const port = randomInt(FIRST, END);
    const server = createServer();
    try {
      await once(server.listen(port, HOST), 'listening');
      return port;
    } catch (error) {
      if (tried >= TRIES) throw error;
    } finally {
      await new Promise((done) => server.close(done));
    }
  }
}
