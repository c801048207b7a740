import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type AnalysisThread, startAnalysisThread } from '../../server/work/startAnalysisThread.ts';
import { startService, type TestService } from '../support/service.ts';
import { newFleet, store, strokeBody } from './strokeFixture.ts';

let service: TestService;
let token: string;

beforeAll(async () => {
  service = await startService({ worker: false });
  token = await service.signIn();
});
afterAll(() => service.stop());

async function withThread(databaseUrl: string, work: (thread: AnalysisThread) => Promise<void>) {
  const thread = startAnalysisThread({ databaseUrl, connections: 2 }, service.app.log);
  try {
    await work(thread);
  } finally {
    thread.stop();
    await thread.end();
  }
}

const noRoom = () => ({ accountId: randomUUID(), roomId: randomUUID() });

test('rooms are analysed side by side, each answered for itself', async () => {
  const fleet = await newFleet(service, token);
  await store(service, fleet, [strokeBody(fleet.roomId, 0), strokeBody(fleet.roomId, 1)]);
  const { rows } = await service.pool.query('select account_id from rooms where id = $1', [fleet.roomId]);
  await withThread(service.databaseUrl, async (thread) => {
    const room = { accountId: rows[0].account_id, roomId: fleet.roomId };
    expect(await Promise.all([thread.analyse(room), thread.analyse(noRoom())])).toEqual(['done', 'done']);
  });
  const status = await service.request('GET', `/rooms/${fleet.roomId}/status`, { token });
  expect(status.body.pending).toBe(0);
});

test('what the analysis throws is thrown here, and the thread goes on', async () => {
  const gone = new URL(service.databaseUrl);
  gone.pathname = '/no-such-database';
  await withThread(gone.href, async (thread) => {
    await expect(thread.analyse(noRoom())).rejects.toThrow('does not exist');
    await expect(thread.analyse(noRoom())).rejects.toThrow('does not exist');
  });
});

test('a room that is asked for after the stop is left', async () => {
  await withThread(service.databaseUrl, async (thread) => {
    expect(await thread.analyse(noRoom())).toBe('done');
    thread.stop();
    expect(await thread.analyse(noRoom())).toBe('stopped');
  });
});
