import pg from 'pg';
import { ask, withPostgres } from './benchPostgres.ts';
import { type Child, startChild } from './childProcess.ts';
import { analysed, type BenchFleet, makeFleet } from './fleet.ts';
import { type Floors, openFloors } from './floors.ts';
import { linesOf, type Rates } from './ingestLines.ts';
import { acknowledgementTimes, sendAll, type Target } from './load.ts';
import { postgresMs, processorMs } from './processorTime.ts';
import { CBOR_TYPE, JSON_TYPE, strokeSource } from './sentStrokes.ts';
import { startBenchService } from './startBenchService.ts';
import { SAMPLES_A_STROKE } from './syntheticStroke.ts';
import type { Line } from './table.ts';

const ROOMS = 40;
const ROUNDS = 3;
const CONNECTIONS = 32;
const BATCH = { size: 100, connections: 8 };
/** A ready row: 4,096 bytes of samples and 480 of measures. */
const READY_ROW = Buffer.alloc(4096 + 480, 7);

/** How many of each in a round. */
const COUNTS = { warmUp: 3000, floor: 2500, single: 1200, batches: 2000, rows: 40, paced: 600 };

interface Bench {
  readonly fleet: BenchFleet;
  readonly rivals: string;
  readonly client: pg.Client;
  readonly floors: Floors;
  /** Processor milliseconds of the service and of Postgres so far; of what it is measured against likewise. */
  readonly spentMs: () => number;
  readonly spentByRivalsMs: () => number;
  readonly counts: typeof COUNTS;
}

/**
 * Strokes a second through the service, over HTTP and until analysed, against the floors of the same run and what
 * people write first, a row for each sample. All are started once and warmed up, as a service runs for months; then
 * they take turns for some rounds, of which the medians count. `part` makes it so much shorter, for trying it out.
 */
export function ingestBench(part = 1): Promise<Line[]> {
  const scaled = Object.entries(COUNTS).map(([what, count]) => [
    what,
    BATCH.size * Math.ceil((part * count) / BATCH.size),
  ]);
  const counts: typeof COUNTS = { ...COUNTS, ...Object.fromEntries(scaled), rows: COUNTS.rows };
  return withPostgres(async ({ newDatabase }) => {
    const [rivalsUrl, serviceUrl] = [await newDatabase('rivals'), await newDatabase('service')];
    const rates: Rates = {
      insert: [],
      hundred: [],
      empty: [],
      bare: [],
      rows: [],
      acknowledged: [],
      json: [],
      cbor: [],
      batches: [],
      paced: [],
      pacedBare: [],
      spentMs: { bare: [], json: [], cbor: [], batches: [] },
    };
    await withChildren(rivalsUrl, serviceUrl, counts, async (bench) => {
      const round = roundOf(bench);
      await round.warmUp();
      for (let i = 0; i < ROUNDS; i++) await round.measure(rates);
    });
    return [...linesOf(rates), ...(await diskLines(serviceUrl, rivalsUrl))];
  });
}

async function withChildren(
  rivalsUrl: string,
  serviceUrl: string,
  counts: typeof COUNTS,
  work: (bench: Bench) => Promise<void>,
): Promise<void> {
  const children: Child[] = [];
  const client = new pg.Client(serviceUrl);
  const floors = await openFloors(rivalsUrl);
  try {
    const rivals = await startChild('rivals.ts', { DATABASE_URL: rivalsUrl });
    children.push(rivals);
    const service = await startBenchService(serviceUrl);
    children.push(service);
    await client.connect();
    const fleet = await makeFleet(String(service.said.url), ROOMS);
    const { rows } = await client.query<{ pid: number }>('select pg_backend_pid() as pid');
    const spent = (child: Child) => () => processorMs(child.process.pid ?? 0) + postgresMs(rows[0].pid);
    await work({
      fleet,
      rivals: `http://127.0.0.1:${rivals.said.port}`,
      client,
      floors,
      spentMs: spent(service),
      spentByRivalsMs: spent(rivals),
      counts,
    });
  } finally {
    await client.end();
    await floors.end();
    await Promise.all(children.map((child) => child.stop()));
  }
}

function roundOf({ fleet, rivals, client, floors, spentMs, spentByRivalsMs, counts }: Bench) {
  const source = strokeSource(fleet.rooms);
  const service = (type: Target['headers']): Target => ({
    url: `${fleet.url}/api/v1/strokes`,
    headers: { ...type, authorization: `Bearer ${fleet.logger}` },
  });
  const floor = async (path: string) => {
    const ready = Array.from({ length: counts.floor }, () => READY_ROW);
    return counts.floor / (await sendAll({ url: rivals + path, headers: {} }, ready, CONNECTIONS));
  };
  const untilAnalysed = async (
    target: Target,
    bodies: readonly Buffer[],
    strokes: number,
    connections = CONNECTIONS,
  ) => {
    const [started, spentBefore] = [performance.now(), spentMs()];
    const sendingS = await sendAll(target, bodies, connections);
    await analysed(client);
    return {
      acknowledged: strokes / sendingS,
      analysed: (1000 * strokes) / (performance.now() - started),
      spentMs: (spentMs() - spentBefore) / strokes,
    };
  };
  const [asJson, asCbor] = [service(JSON_TYPE), service(CBOR_TYPE)];
  return {
    async warmUp() {
      await floor('/bare');
      await untilAnalysed(asJson, source.json(counts.warmUp), counts.warmUp);
      await untilAnalysed(asCbor, source.cbor(counts.single), counts.single);
    },
    async measure(rates: Rates) {
      rates.insert.push(await floors.single(counts.floor));
      rates.hundred.push(await floors.hundred(counts.floor));
      rates.empty.push(await floor('/empty'));
      const spentBefore = spentByRivalsMs();
      rates.bare.push(await floor('/bare'));
      rates.spentMs.bare.push((spentByRivalsMs() - spentBefore) / counts.floor);
      const json = await untilAnalysed(asJson, source.json(counts.single), counts.single);
      rates.acknowledged.push(json.acknowledged);
      const cbor = await untilAnalysed(asCbor, source.cbor(counts.single), counts.single);
      const bodies = source.batches(counts.batches, BATCH.size);
      const batches = await untilAnalysed(asJson, bodies, counts.batches, BATCH.connections);
      for (const [form, found] of Object.entries({ json, cbor, batches })) {
        // One of the three that stand in the line above.
        const name = form as 'json' | 'cbor' | 'batches';
        rates[name].push(found.analysed);
        rates.spentMs[name].push(found.spentMs);
      }
      const rows = { url: `${rivals}/rows`, headers: {} };
      rates.rows.push(counts.rows / (await sendAll(rows, source.json(counts.rows), BATCH.connections)));
      const perSecond = json.analysed / 2;
      rates.paced.push(await acknowledgementTimes(asJson, source.json(counts.paced), perSecond));
      await analysed(client);
      const ready = Array.from({ length: counts.paced }, () => READY_ROW);
      const bare = { url: `${rivals}/bare`, headers: {} };
      rates.pacedBare.push(await acknowledgementTimes(bare, ready, perSecond));
    },
  };
}

/** Bytes on disk for each sample, every index, measure and checkpoint included, against a row for each. */
async function diskLines(serviceUrl: string, rivalsUrl: string): Promise<Line[]> {
  const [ours] = await ask(
    serviceUrl,
    `select sum(pg_total_relation_size(oid))::float8 / ($1 * (select count(*) from strokes)) as bytes
     from pg_class where relkind = 'r' and relnamespace = 'public'::regnamespace`,
    [SAMPLES_A_STROKE],
  );
  const [theirs] = await ask(
    rivalsUrl,
    `select pg_total_relation_size('samples')::float8 / (select count(*) from samples) as bytes`,
  );
  return [
    { what: 'bytes on disk a sample, everything included', ratio: Number(ours.bytes), aim: '' },
    {
      what: 'the same to a row for each sample',
      ratio: Number(ours.bytes) / Number(theirs.bytes),
      aim: '<= 0.0333',
    },
  ];
}
