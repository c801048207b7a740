import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { connect, createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { quietPort } from '../../../server/database/embedded/quietPort.ts';
import { type ChildService, startChild } from '../../support/childService.ts';
import { createDatabase } from '../../support/databases.ts';

let folder: string;
let database: { url: string; drop(): Promise<void> };
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'slideload-await-'));
  database = await createDatabase(inject('postgresUrl'), inject('postgresTemplate'));
});
afterAll(async () => {
  await database.drop();
  await rm(folder, { recursive: true });
});

/** A service whose database nobody answers for yet, once it has said so; and the address to answer at. */
async function waiting(port = '0'): Promise<{ service: ChildService; url: URL }> {
  const url = new URL(database.url);
  url.hostname = '127.0.0.1';
  url.port = String(await quietPort());
  const service = startChild({ DATA_DIR: folder, DATABASE_URL: url.href, PORT: port }, 'node');
  await expect
    .poll(() => service.said.err)
    .toMatch(/^The database at DATABASE_URL cannot be used: .*ECONNREFUSED/);
  return { service, url };
}

/** Hands every connection on to the real Postgres. */
async function answerAt(port: string): Promise<Server> {
  const to = new URL(database.url);
  const server = createServer((from) => {
    const onward = connect(Number(to.port), to.hostname);
    for (const [one, other] of [
      [from, onward],
      [onward, from],
    ]) {
      one.pipe(other);
      one.on('error', () => other.destroy());
      one.on('close', () => other.destroy());
    }
  });
  server.listen(Number(port), '127.0.0.1');
  await once(server, 'listening');
  return server;
}

test('a start waits for its database, says so once without its password, and serves when it comes up', async () => {
  const { service, url } = await waiting();
  const postgres = await answerAt(url.port);
  const address = await service.ready;
  expect((await fetch(`${address}/readyz`)).status).toBe(200);
  expect(service.said.err.trim().split('\n'), service.said.err).toHaveLength(1);
  expect(service.said.err).not.toContain(url.password);
  service.signal('SIGTERM');
  expect(await service.exited).toBe(0);
  postgres.close();
});

test('SIGTERM ends a start that waits for its database', async () => {
  const { service } = await waiting();
  service.signal('SIGTERM');
  expect(await service.exited, service.said.err).toBe(0);
  expect(service.said.out).not.toContain('ready');
});

test('while a start waits for its database every request is told to come again, and is served once it is there', async () => {
  const port = String(await quietPort());
  const { service, url } = await waiting(port);
  for (const path of ['/readyz', '/healthz', '/api/v1/coaches']) {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`);
    expect([answer.status, answer.headers.get('retry-after')]).toEqual([503, '5']);
    expect(await answer.json()).toMatchObject({ type: '/problems/unavailable', status: 503 });
  }
  const postgres = await answerAt(url.port);
  expect(await service.ready).toBe(`http://127.0.0.1:${port}`);
  expect((await fetch(`http://127.0.0.1:${port}/readyz`)).status).toBe(200);
  service.signal('SIGTERM');
  expect(await service.exited).toBe(0);
  postgres.close();
});
