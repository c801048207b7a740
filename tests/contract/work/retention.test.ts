import { beforeEach, expect, test } from 'vitest';
import { dropEmptyPartitions } from '../../../ingest/emptyPartitions.ts';
import { remeasureRoom } from '../../../ingest/roomProgress.ts';
import { ensureTracePartitions } from '../../../ingest/tracePartitions.ts';
import { removeTraces } from '../../../server/work/jobs/removeTraces.ts';
import { startWorker } from '../../../server/work/startWorker.ts';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { readRoom } from '../results/roomAnswers.ts';
import { type Fleet, newFleet, send, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
let dealer: Member;
let fleet: Fleet;
let ids: string[];

const DAY_MS = 86_400_000;
const NOW = new Date();
const daysAgo = (days: number) => new Date(NOW.getTime() - days * DAY_MS);
/** Strokes that arrived so many days ago; two months are at most 62 days. */
const ARRIVED = [200, 100, 63, 58, 20, 0];

beforeEach(async () => {
  dealer = await service.newAccount();
  ({ fleet, ids } = await arrivedLongAgo(dealer));
});

async function arrivedLongAgo(member: Member) {
  const made = await newFleet(service, member.token);
  const stored = await store(
    service,
    made,
    ARRIVED.map((_, day) => strokeBody(made.roomId, day)),
  );
  await settled(service, member.token, made.roomId);
  for (const [i, id] of stored.entries()) await letArriveAt(id, daysAgo(ARRIVED[i]));
  return { fleet: made, ids: stored };
}

/** Both in one statement's time: a trace goes by the arrival of its stroke. */
async function letArriveAt(strokeId: string, at: Date): Promise<void> {
  await service.pool.query('update strokes set received_at = $2 where id = $1', [strokeId, at]);
  await service.pool.query('update traces set received_at = $2 where stroke_id = $1', [strokeId, at]);
}

const ask = (method: string, path: string, body?: object) => service.as(dealer.token, method, path, body);
const keepFor = (traceMonths: unknown) => ask('PATCH', '/account', { traceMonths });
const traces = async () =>
  Promise.all(ids.map(async (id) => (await ask('GET', `/strokes/${id}/trace`)).status));

test('samples are kept for ever unless the account says otherwise', async () => {
  const account = { id: dealer.person.accountId, name: 'Stranger', traceMonths: null };
  expect((await ask('GET', '/account')).body).toEqual(account);
  await removeTraces(service.db, NOW);
  expect(await traces()).toEqual([200, 200, 200, 200, 200, 200]);
  expect((await keepFor(2)).body).toEqual({ ...account, traceMonths: 2 });
  expect((await keepFor(null)).body).toEqual(account);
});

test.each([0, -1, 1.5, 1201, 'two'])('%s is no number of months', async (months) => {
  const answer = await keepFor(months);
  expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/traceMonths']);
});

test('what is older goes, measures and results stay, and the run says what it removed', async () => {
  const before = await readRoom(service, fleet);
  const strokes = await Promise.all(ids.map(async (id) => (await ask('GET', `/strokes/${id}`)).body));
  const { rows } = await service.pool.query(
    'select sum(octet_length(trace))::integer as bytes from traces where stroke_id = any($1::uuid[])',
    [ids.slice(0, 3)],
  );
  await keepFor(2);
  await removeTraces(service.db, NOW);

  expect(await traces()).toEqual([410, 410, 410, 200, 200, 200]);
  const gone = await ask('GET', `/strokes/${ids[0]}/trace`);
  expect(gone.body).toMatchObject({
    type: '/problems/samples-removed',
    detail: `The samples were removed on ${NOW.toISOString().slice(0, 10)} by the account's setting.`,
  });
  for (const [i, id] of ids.entries()) {
    expect((await ask('GET', `/strokes/${id}`)).body.analysis).toEqual(strokes[i].analysis);
  }
  expect(await readRoom(service, fleet)).toBe(before);
  const run = {
    traceMonths: 2,
    tracesBefore: 3,
    tracesRemoved: 3,
    tracesAfter: 0,
    bytesRemoved: rows[0].bytes,
  };
  expect((await ask('GET', '/account/retention-runs')).body.items).toMatchObject([run]);
  await removeTraces(service.db, NOW);
  expect((await ask('GET', '/account/retention-runs')).body.items).toHaveLength(1);
});

test('the samples of others stay, and others do not read what was removed', async () => {
  const stranger = await service.newAccount();
  const theirs = await arrivedLongAgo(stranger);
  await keepFor(1);
  await removeTraces(service.db, NOW);
  const kept = await service.as(stranger.token, 'GET', `/strokes/${theirs.ids[0]}/trace`);
  expect(kept.status).toBe(200);
  const runs = await service.as(stranger.token, 'GET', '/account/retention-runs');
  expect(runs.body).toEqual({ items: [], next: null });
});

test('the runs come page by page, the latest first', async () => {
  for (const months of [6, 3, 2]) {
    await keepFor(months);
    await removeTraces(service.db, NOW);
  }
  const first = (await ask('GET', '/account/retention-runs?limit=2')).body;
  const rest = (await ask('GET', `/account/retention-runs?limit=2&cursor=${first.next}`)).body;
  const runs = [...first.items, ...rest.items].map((run) => [run.traceMonths, run.tracesRemoved]);
  expect(runs).toEqual([
    [2, 1],
    [3, 1],
    [6, 1],
  ]);
  expect(rest.next).toBeNull();
});

test('a stroke that is not measured yet keeps its samples until it is', async () => {
  await service.pool.query('update strokes set analysis = null where id = $1', [ids[1]]);
  await keepFor(2);
  await removeTraces(service.db, NOW);
  expect(await traces()).toEqual([410, 200, 410, 200, 200, 200]);
  const [run] = (await ask('GET', '/account/retention-runs')).body.items;
  expect(run).toMatchObject({ tracesBefore: 3, tracesRemoved: 2, tracesAfter: 1 });
});

test('measuring anew leaves what has no samples any more as it was measured', async () => {
  await keepFor(2);
  await removeTraces(service.db, NOW);
  const before = await readRoom(service, fleet);
  await remeasureRoom(service.db, dealer.person.accountId, fleet.roomId);
  expect(await readRoom(service, fleet)).toBe(before);
  // Another version of the analysis, found at the start of a worker.
  await service.pool.query('update room_checkpoints set analysis_version = 0 where room_id = $1', [
    fleet.roomId,
  ]);
  const worker = await startWorker({ pool: service.pool, log: service.app.log });
  expect(await readRoom(service, fleet)).toBe(before);
  await worker.stop();
  const { rows } = await service.pool.query(
    'select count(*)::integer as old from room_checkpoints where room_id = $1 and analysis_version = 0',
    [fleet.roomId],
  );
  expect(rows[0].old).toBe(0);
  const other = await ask('PATCH', `/strokes/${ids[0]}`, { direction: 'retract' });
  expect([other.status, other.body.type]).toEqual([409, '/problems/conflict']);
  expect((await ask('PATCH', `/strokes/${ids[0]}`, { excluded: true })).status).toBe(200);
});

test('a month without any samples left is dropped, while strokes are sent', async () => {
  // Other accounts of this file keep theirs, and a month is one for all.
  await service.pool.query('delete from traces where account_id <> $1', [dealer.person.accountId]);
  await ensureTracePartitions(service.pool, daysAgo(ARRIVED[0]));
  for (const [i, id] of ids.entries()) await letArriveAt(id, daysAgo(ARRIVED[i]));
  const months = async () => {
    const { rows } = await service.pool.query(
      `select inhrelid::regclass::text as name from pg_inherits where inhparent = 'traces'::regclass`,
    );
    return rows.map(({ name }) => name);
  };
  const month = (days: number) => `traces_${daysAgo(days).toISOString().slice(0, 7).replace('-', '_')}`;
  expect(await months()).toContain(month(ARRIVED[0]));
  await keepFor(6);
  await removeTraces(service.db, NOW);
  const sending = Array.from({ length: 20 }, (_, n) =>
    send(service, fleet.loggerToken, strokeBody(fleet.roomId, 50 + n)),
  );
  expect(await dropEmptyPartitions(service.pool, NOW)).toContain(month(ARRIVED[0]));
  for (const answer of await Promise.all(sending)) expect(answer.body.results[0].outcome).toBe('stored');
  expect(await months()).not.toContain(month(ARRIVED[0]));
  expect(await months()).toContain(month(0));
  expect(await traces()).toEqual([410, 200, 200, 200, 200, 200]);
});
