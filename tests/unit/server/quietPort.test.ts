import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { expect, test } from 'vitest';
import { quietPort } from '../../../server/database/embedded/quietPort.ts';

/** The first port that this system gives to whoever asks for any; where it does not say so, the lowest that any gives. */
async function firstGiven(): Promise<number> {
  const range = await readFile('/proc/sys/net/ipv4/ip_local_port_range', 'utf8').catch(() => '32768');
  return Number.parseInt(range, 10);
}

test('a port that is kept for later is none that somebody else is given meanwhile', async () => {
  const ports = await Promise.all(Array.from({ length: 20 }, quietPort));
  const given = await firstGiven();
  for (const port of ports) expect(port).toBeLessThan(given);
  const [port] = ports;
  const server = createServer().listen(port, '127.0.0.1');
  await once(server, 'listening');
  server.close();
});
