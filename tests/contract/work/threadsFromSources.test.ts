import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import { expect, test } from 'vitest';
import type { RoomDescription } from '../../../analysis/trace.ts';
import { decodeStroke } from '../../../ingest/json/stroke.ts';
import type { ToCompareThread } from '../../../server/results/comparing/compareMessages.ts';
import { StrokeInHand } from '../../../server/work/inHand/strokeInHand.ts';
import type { ToMeasureThread } from '../../../server/work/measuring/measureMessages.ts';
import type { ThreadStart, ToThread } from '../../../server/work/thread/threadMessages.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { newFleet, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

// In all other tests threads begin from what was built: see `tests/support/builtThreads.ts`.

const service = serviceOfTests({ worker: false });

const ROOM: RoomDescription = {
  drive: 'in-wall',
  sides: ['front', 'rear'],
  travelMetres: null,
  gearTeeth: null,
  rackPitchMm: null,
  ratedAmps: null,
  nominalVolts: 12,
  positiveDirection: 'extend',
};

test('the thread of the analysis does its work from the sources', async () => {
  const token = await service.signIn();
  const fleet = await newFleet(service, token);
  await store(service, fleet, [strokeBody(fleet.roomId, 0), strokeBody(fleet.roomId, 1)]);
  const workerData: ThreadStart = {
    databaseUrl: service.databaseUrl,
    hand: new StrokeInHand().memory,
    heldUp: [],
  };
  const thread = new Worker(new URL('../../../server/work/thread/threadEntry.mjs', import.meta.url), {
    workerData,
  });
  expect((await settled(service, token, fleet.roomId)).strokes).toBe(2);
  const ended = once(thread, 'exit');
  thread.postMessage('stop' satisfies ToThread);
  expect(await ended).toEqual([0]);
});

test('the thread that measures does its work from the sources', async () => {
  const thread = new Worker(new URL('../../../server/work/measuring/measureEntry.mjs', import.meta.url));
  expect(await once(thread, 'message')).toEqual(['ready']);
  const recorded = decodeStroke(strokeBody(randomUUID(), 0), '');
  const asked: ToMeasureThread = { number: 1, strokes: [{ recorded, direction: 'extend', room: ROOM }] };
  thread.postMessage(asked);
  const [{ number, analyses }] = await once(thread, 'message');
  expect([number, JSON.parse(analyses[0]).status]).toEqual([1, 'done']);
  await thread.terminate();
});

test('the thread that compares does its work from the sources', async () => {
  const thread = new Worker(new URL('../../../server/results/comparing/compareEntry.mjs', import.meta.url));
  const asked: ToCompareThread = { before: [], after: [], room: ROOM };
  thread.postMessage(asked);
  const [{ comparison }] = await once(thread, 'message');
  expect(comparison.groups.map(({ side }: { side: string }) => side)).toEqual([
    'front',
    'front',
    'rear',
    'rear',
  ]);
  await thread.terminate();
});
