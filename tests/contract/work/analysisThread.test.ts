import pg from 'pg';
import { expect, test } from 'vitest';
import { openDatabase } from '../../../server/database/openDatabase.ts';
import type { LogDetails } from '../../../server/work/inHand/analysisLog.ts';
import { startAnalysisThread } from '../../../server/work/thread/startAnalysisThread.ts';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { newFleet, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const dealer = dealerOfTests(service);

test('rooms are kept up to date, those that came before it and those that come while it runs', async () => {
  const [early, late] = [await newFleet(service, dealer.token), await newFleet(service, dealer.token)];
  await store(service, early, [strokeBody(early.roomId, 0), strokeBody(early.roomId, 1)]);
  const thread = startAnalysisThread({ databaseUrl: service.databaseUrl }, service.app.log);
  try {
    expect((await settled(service, dealer.token, early.roomId)).strokes).toBe(2);
    await store(service, late, [strokeBody(late.roomId, 0)]);
    expect((await settled(service, dealer.token, late.roomId)).strokes).toBe(1);
  } finally {
    await thread.stop();
  }
});

test('its commits wait for no disk, while what is acknowledged does', async () => {
  const name = new URL(service.databaseUrl).pathname.slice(1);
  const serving = openDatabase(service.databaseUrl);
  // Holds for connections that are opened from now on, unless they want it otherwise.
  const owner = new pg.Client(service.databaseUrl);
  await owner.connect();
  await owner.query(`alter database ${name} set synchronous_commit = 'on'`).finally(() => owner.end());
  await service.pool.query(`
    create table waits (setting text);
    create function note_wait() returns trigger language plpgsql as $$
      begin insert into waits values (current_setting('synchronous_commit')); return null; end $$;
    create trigger noted after insert or update on room_results for each row execute function note_wait()`);
  const fleet = await newFleet(service, dealer.token);
  const thread = startAnalysisThread({ databaseUrl: service.databaseUrl }, service.app.log);
  try {
    await store(service, fleet, [strokeBody(fleet.roomId, 0)]);
    await settled(service, dealer.token, fleet.roomId);
    const { rows: noted } = await service.pool.query('select distinct setting from waits');
    expect(noted).toEqual([{ setting: 'off' }]);
    const { rows } = await serving.pool.query('show synchronous_commit');
    expect(rows).toEqual([{ synchronous_commit: 'on' }]);
  } finally {
    await thread.stop();
    await serving.pool.end();
    await service.pool.query('drop trigger noted on room_results');
  }
});

test('what the database refuses is told here, again and again until it is stopped', async () => {
  const gone = new URL(service.databaseUrl);
  gone.pathname = '/no-such-database';
  const told: LogDetails[] = [];
  await new Promise<void>((resolve) => {
    const log = {
      error: (details: LogDetails) => {
        told.push(details);
        if (told.length === 2) void thread.stop().then(resolve);
      },
    };
    const thread = startAnalysisThread({ databaseUrl: gone.href }, log);
  });
  // A third may come before it has stopped.
  expect(told.slice(0, 2).map(({ err }) => String(err))).toEqual([
    expect.stringContaining('does not exist'),
    expect.stringContaining('does not exist'),
  ]);
});

test('a stroke that the analysis does not come to an end with is set aside, and its room goes on', async () => {
  const fleet = await newFleet(service, dealer.token);
  const samples = Array.from({ length: 200_000 }, (_, i) => 8 + Math.sin(i / 7));
  const largest = strokeBody(fleet.roomId, 1, 9, {
    sides: ['front', 'rear'].map((side) => ({ side, rateHz: 5000, amps: samples })),
  });
  const [, largestId] = await store(service, fleet, [strokeBody(fleet.roomId, 0), largest]);
  const told: LogDetails[] = [];
  // No stroke of this size is ever done within a millisecond.
  const thread = startAnalysisThread(
    { databaseUrl: service.databaseUrl, stuckAfterMs: 1 },
    { error: (details) => told.push(details) },
  );
  try {
    expect((await settled(service, dealer.token, fleet.roomId)).pending).toBe(0);
  } finally {
    await thread.stop();
  }
  const { body } = await service.as(dealer.token, 'GET', `/strokes/${largestId}`);
  expect(body.analysis).toEqual({
    status: 'unusable',
    reason: 'The record could not be measured.',
    sides: {},
    share: null,
    lagS: null,
  });
  expect(told).toContainEqual(expect.objectContaining({ strokeId: largestId }));
});
