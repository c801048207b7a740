import { once } from 'node:events';
import { type AddressInfo, createServer } from 'node:net';
import { setTimeout as rest } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { awaitPort } from '../../../server/awaitPort.ts';

const HOST = '127.0.0.1';

async function taken() {
  const holder = createServer();
  await once(holder.listen(0, HOST), 'listening');
  // A TCP server that listens has an address of this kind.
  return { holder, port: (holder.address() as AddressInfo).port };
}

test('a port is waited for until it is given back', async () => {
  const { holder, port } = await taken();
  const waited = awaitPort(port, HOST).then(() => 'given back');
  expect(await Promise.race([waited, rest(300, 'taken')])).toBe('taken');
  holder.close();
  expect(await waited).toBe('given back');
  await once(createServer().listen(port, HOST).unref(), 'listening');
});

test('one that stays taken is not waited for without end, and what is no address of ours not at all', async () => {
  const { holder, port } = await taken();
  const begun = performance.now();
  await awaitPort(port, HOST);
  expect(performance.now() - begun).toBeGreaterThan(2000);
  const first = await Promise.race([
    awaitPort(port, HOST).then(() => 'taken'),
    awaitPort(port, '192.0.2.1').then(() => 'not ours'),
  ]);
  expect(first).toBe('not ours');
  holder.close();
});
