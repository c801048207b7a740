import pg from 'pg';
import { describe, expect, test } from 'vitest';
import { ensureTracePartitions } from '../../../ingest/tracePartitions.ts';
import { queueWithdrawal } from '../../../server/things/queueWithdrawal.ts';
import { freeLostJobs } from '../../../server/work/jobs/freeLostJobs.ts';
import { prepareQueue } from '../../../server/work/jobs/queue.ts';
import { startWorker } from '../../../server/work/startWorker.ts';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import {
  dayAt,
  type Fleet,
  newFleet,
  newService,
  settled,
  store,
  strokeBody,
} from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const dealer = dealerOfTests(service);

const parts = () => ({ pool: service.pool, db: service.db, log: service.app.log });
const pendingOf = async (fleet: Fleet) =>
  (await service.as(dealer.token, 'GET', `/rooms/${fleet.roomId}/status`)).body.pending;

async function withWorkers(count: number, work: () => Promise<void>): Promise<void> {
  const workers = await Promise.all(Array.from({ length: count }, () => startWorker(parts())));
  try {
    await work();
  } finally {
    await Promise.all(workers.map((worker) => worker.stop()));
  }
}

const strokes = (fleet: Fleet, from: number, count: number) =>
  Array.from({ length: count }, (_, i) => strokeBody(fleet.roomId, from + i));

async function one<Row>(text: string, values: unknown[]): Promise<Row> {
  return (await service.pool.query(text, values)).rows[0];
}

test('strokes stored while no worker ran are analysed by the next one', async () => {
  const fleet = await newFleet(service, dealer.token);
  await store(service, fleet, strokes(fleet, 0, 6));
  expect(await pendingOf(fleet)).toBe(6);
  await withWorkers(1, async () => {
    expect((await settled(service, dealer.token, fleet.roomId)).strokes).toBe(6);
  });
});

test('a room that another worker holds is left to it, and taken up when that one dies', async () => {
  const [held, free] = [await newFleet(service, dealer.token), await newFleet(service, dealer.token)];
  await store(service, held, strokes(held, 0, 3));
  await store(service, free, strokes(free, 0, 3));
  const other = new pg.Client(service.databaseUrl);
  other.on('error', () => undefined);
  await other.connect();
  const { rows } = await other.query(
    `select pg_advisory_lock(hashtextextended('analyse ' || account_id || ' ' || id, 0)), pg_backend_pid() as pid
     from rooms where id = $1`,
    [held.roomId],
  );
  await withWorkers(1, async () => {
    await settled(service, dealer.token, free.roomId);
    expect(await pendingOf(held)).toBe(3);
    // Of the server's user: ours may not end what is of others.
    const admin = new pg.Client(service.databaseUrl);
    await admin.connect();
    await admin.query('select pg_terminate_backend($1)', [rows[0].pid]);
    await admin.end();
    await settled(service, dealer.token, held.roomId);
  });
});

test('three workers while strokes of a few rooms keep coming: every room is up to date at the end', async () => {
  const fleets = await Promise.all([1, 2, 3].map(() => newFleet(service, dealer.token)));
  await withWorkers(3, async () => {
    for (let day = 0; day < 20; day += 2) {
      await Promise.all(fleets.map((fleet) => store(service, fleet, strokes(fleet, day, 2))));
    }
    for (const fleet of fleets) {
      expect((await settled(service, dealer.token, fleet.roomId)).strokes).toBe(20);
      const { n } = await one<{ n: number }>(
        'select count(*)::integer as n from measures where room_id = $1',
        [fleet.roomId],
      );
      expect(n).toBe(40);
    }
  });
});

test('a stroke whose samples are damaged is unusable, and the room goes on', async () => {
  const fleet = await newFleet(service, dealer.token);
  const ids = await store(service, fleet, strokes(fleet, 0, 4));
  await service.pool.query(`update traces set trace = '\\x0102030405' where stroke_id = $1`, [ids[1]]);
  await service.pool.query('delete from traces where stroke_id = $1', [ids[2]]);
  await withWorkers(1, async () => void (await settled(service, dealer.token, fleet.roomId)));
  const statuses: string[] = [];
  for (const id of ids) {
    statuses.push((await service.as(dealer.token, 'GET', `/strokes/${id}`)).body.analysis.status);
  }
  expect(statuses).toEqual(['done', 'unusable', 'unusable', 'done']);
});

test('a service after the last stroke is pending until it has been gone through', async () => {
  const fleet = await newFleet(service, dealer.token);
  await withWorkers(1, async () => {
    await store(service, fleet, strokes(fleet, 0, 3));
    await settled(service, dealer.token, fleet.roomId);
  });
  await newService(service, fleet, dayAt(10));
  expect(await pendingOf(fleet)).toBe(1);
  await withWorkers(1, async () => void (await settled(service, dealer.token, fleet.roomId)));
});

test('removing a room while it is analysed harms nobody', async () => {
  const fleet = await newFleet(service, dealer.token);
  const other = await newFleet(service, dealer.token);
  await withWorkers(2, async () => {
    await store(service, fleet, strokes(fleet, 0, 30));
    const removed = service.as(dealer.token, 'DELETE', `/rooms/${fleet.roomId}`);
    await store(service, other, strokes(other, 0, 3));
    expect((await removed).status).toBe(204);
    await settled(service, dealer.token, other.roomId);
  });
  const { n } = await one<{ n: number }>('select count(*)::integer as n from strokes where room_id = $1', [
    fleet.roomId,
  ]);
  expect(n).toBe(0);
});

describe('checkpoints', () => {
  const checkpointsOf = async (fleet: Fleet): Promise<{ events: number; version: number }[]> => {
    const { rows } = await service.pool.query(
      `select events, analysis_version as version from room_checkpoints where room_id = $1 order by at`,
      [fleet.roomId],
    );
    return rows;
  };

  test('an on-time stroke goes on from the latest one, whatever lies before it', async () => {
    const fleet = await newFleet(service, dealer.token);
    await withWorkers(1, async () => {
      await store(service, fleet, strokes(fleet, 0, 12));
      await settled(service, dealer.token, fleet.roomId);
      // Were the history gone through again, these would change the count of usable strokes.
      await service.pool.query(
        `update strokes set analysis = '{"status": "unusable", "reason": "unread"}' where room_id = $1`,
        [fleet.roomId],
      );
      await store(service, fleet, strokes(fleet, 12, 1));
      await settled(service, dealer.token, fleet.roomId);
    });
    const { usable } = await one<{ usable: { extend: number; retract: number } }>(
      `select summary -> 'usableStrokes' as usable from room_results where room_id = $1`,
      [fleet.roomId],
    );
    expect(usable.extend + usable.retract).toBe(13);
  });

  test('one stays for every 32 events, and one of where a worker took the room up', async () => {
    const fleet = await newFleet(service, dealer.token);
    await withWorkers(1, async () => {
      for (let day = 0; day < 66; day += 6) {
        await store(service, fleet, strokes(fleet, day, 6));
        await settled(service, dealer.token, fleet.roomId);
      }
    });
    // What comes after, the worker remembers.
    expect((await checkpointsOf(fleet)).map((checkpoint) => checkpoint.events)).toEqual([31, 63]);
    await withWorkers(1, async () => {
      await store(service, fleet, strokes(fleet, 66, 1));
      await settled(service, dealer.token, fleet.roomId);
    });
    expect((await checkpointsOf(fleet)).map((checkpoint) => checkpoint.events)).toEqual([31, 63, 67]);
  });

  test('those of another version of the analysis are not gone on from', async () => {
    const fleet = await newFleet(service, dealer.token);
    await withWorkers(1, async () => {
      await store(service, fleet, strokes(fleet, 0, 4));
      await settled(service, dealer.token, fleet.roomId);
    });
    const [{ version }] = await checkpointsOf(fleet);
    await service.pool.query('update room_checkpoints set analysis_version = -1 where room_id = $1', [
      fleet.roomId,
    ]);
    await withWorkers(1, async () => void (await settled(service, dealer.token, fleet.roomId)));
    expect(await checkpointsOf(fleet)).toEqual([{ events: 4, version }]);
  });
});

test('a job whose end the database does not take harms neither process nor queue, and is done again', async () => {
  const { roomId } = await newFleet(service, dealer.token);
  const { accountId } = await one<{ accountId: string }>(
    'select account_id as "accountId" from rooms where id = $1',
    [roomId],
  );
  const jobs = async () => (await service.pool.query('select attempts from graphile_worker.jobs')).rows;
  // SQLSTATE 57P01 is what Postgres says where it is shut down.
  // What was taken from a sequence stays taken, whatever is rolled back.
  await service.pool.query(`
    create sequence graphile_worker.cut_offs;
    create function graphile_worker.cut_off() returns trigger language plpgsql as $$ begin
      perform nextval('graphile_worker.cut_offs');
      raise exception 'terminating connection' using errcode = '57P01';
    end $$;
    create trigger cut_off before delete on graphile_worker._private_jobs
      for each row execute function graphile_worker.cut_off()`);
  await withWorkers(1, async () => {
    await queueWithdrawal(service.db, accountId, [roomId]);
    const isCutOff = () => one<{ cut: boolean }>('select is_called as cut from graphile_worker.cut_offs', []);
    await expect.poll(isCutOff).toEqual({ cut: true });
    expect(await jobs()).toEqual([{ attempts: 1 }]);
    await service.pool.query('drop trigger cut_off on graphile_worker._private_jobs');
    // One that comes after is done, so there is a runner at work.
    await queueWithdrawal(service.db, accountId, [roomId]);
    await expect.poll(jobs).toEqual([{ attempts: 1 }]);
    await freeLostJobs(service.pool);
    expect(await jobs()).toEqual([{ attempts: 1 }]);
    const isHeldFor = (minutes: number) =>
      service.pool.query(
        `update graphile_worker._private_jobs set locked_at = now() - make_interval(mins => $1)`,
        [minutes],
      );
    // Whoever is only slow keeps it: a job may take some minutes.
    await isHeldFor(14);
    await freeLostJobs(service.pool);
    expect(await jobs()).toEqual([{ attempts: 1 }]);
    expect(await one('select locked_at is not null as held from graphile_worker.jobs', [])).toEqual({
      held: true,
    });
    await isHeldFor(16);
    await freeLostJobs(service.pool);
    await expect.poll(jobs).toEqual([]);
  });
});

test('the queue is prepared by any number of processes at once', async () => {
  await Promise.all(Array.from({ length: 8 }, () => prepareQueue(service.pool)));
});

test('partitions of the samples are made by many at once, and take over what lay in the default one', async () => {
  const fleet = await newFleet(service, dealer.token);
  const [id] = await store(service, fleet, strokes(fleet, 0, 1));
  const now = new Date('2031-05-20T00:00:00Z');
  await service.pool.query(`update traces set received_at = '2031-06-02T00:00:00Z' where stroke_id = $1`, [
    id,
  ]);
  await service.pool.query(`update strokes set received_at = '2031-06-02T00:00:00Z' where id = $1`, [id]);
  await Promise.all(Array.from({ length: 6 }, () => ensureTracePartitions(service.pool, now)));
  const { place } = await one<{ place: string }>(
    'select tableoid::regclass::text as place from traces where stroke_id = $1',
    [id],
  );
  expect(place).toBe('traces_2031_06');
  expect((await service.as(dealer.token, 'GET', `/strokes/${id}/trace`)).status).toBe(200);
  const kept = await one<{ storage: string }>(
    `select attstorage as storage from pg_attribute
     where attrelid = 'traces_2031_06'::regclass and attname = 'trace'`,
    [],
  );
  expect(kept.storage).toBe('e');
});
