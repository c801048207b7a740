import pg from 'pg';
import { ask, withPostgres } from './benchPostgres.ts';
import { type Child, startChild } from './childProcess.ts';
import { analysed, type BenchFleet, makeFleet } from './fleet.ts';
import { sendAll, type Target } from './load.ts';
import { median } from './median.ts';
import { randomNumbers, SAMPLES_A_STROKE, syntheticStroke } from './syntheticStroke.ts';
import type { Line } from './table.ts';

const ROOMS = 40;
const ROUNDS = 3;
const WARM_UP = 400;
const SINGLE = { strokes: 1200, connections: 32 };
const BATCHES = { strokes: 2000, size: 100, connections: 8 };
const FLOOR = { requests: 2500, connections: 32 };
const ROWS = { strokes: 40, connections: 8 };
/** A ready row: 4,096 bytes of samples and 480 of measures. */
const READY_ROW = Buffer.alloc(4096 + 480, 7);

interface Rates {
  empty: number[];
  bare: number[];
  rows: number[];
  /** One stroke a request, while the analysis runs along. */
  acknowledged: number[];
  single: number[];
  batches: number[];
}

/**
 * Strokes a second through the service, over HTTP and until analysed, against the floors of the same run: an empty
 * POST, a bare INSERT of a ready row for each request, and a row for each sample. Every round starts the service and
 * the rivals anew on empty databases and interleaves them; medians of the rounds.
 */
export function ingestBench(): Promise<Line[]> {
  return withPostgres(async ({ newDatabase }) => {
    const rates: Rates = { empty: [], bare: [], rows: [], acknowledged: [], single: [], batches: [] };
    let disk: Line | null = null;
    for (let round = 0; round < ROUNDS; round++) {
      const [rivalsUrl, serviceUrl] = [
        await newDatabase(`rivals${round}`),
        await newDatabase(`service${round}`),
      ];
      await withChildren(rivalsUrl, serviceUrl, (fleet, rivals, client) =>
        measureRound(fleet, rivals, client, rates),
      );
      disk = await diskLine(serviceUrl, rivalsUrl);
    }
    return disk === null ? linesOf(rates) : [...linesOf(rates), disk];
  });
}

async function withChildren(
  rivalsUrl: string,
  serviceUrl: string,
  work: (fleet: BenchFleet, rivals: string, client: pg.Client) => Promise<void>,
): Promise<void> {
  const children: Child[] = [];
  const client = new pg.Client(serviceUrl);
  try {
    const rivals = await startChild('rivals.ts', { DATABASE_URL: rivalsUrl });
    children.push(rivals);
    const service = await startChild('serviceProcess.ts', { DATABASE_URL: serviceUrl });
    children.push(service);
    await client.connect();
    const fleet = await makeFleet(String(service.said.url), ROOMS);
    await work(fleet, `http://127.0.0.1:${rivals.said.port}`, client);
  } finally {
    await client.end();
    await Promise.all(children.map((child) => child.stop()));
  }
}

async function measureRound(
  fleet: BenchFleet,
  rivals: string,
  client: pg.Client,
  rates: Rates,
): Promise<void> {
  const random = randomNumbers(11);
  let number = 0;
  const strokes = (count: number) =>
    Array.from({ length: count }, () => syntheticStroke(fleet.rooms[number % ROOMS], number++, random));
  const one = (stroke: object) => Buffer.from(JSON.stringify(stroke));
  const service: Target = {
    url: `${fleet.url}/api/v1/strokes`,
    headers: { authorization: `Bearer ${fleet.logger}` },
  };
  const rival = (path: string): Target => ({ url: rivals + path, headers: {} });
  const ready = Array.from({ length: FLOOR.requests }, () => READY_ROW);
  const untilAnalysed = async (bodies: readonly Buffer[], count: number, connections: number) => {
    const started = performance.now();
    const sendingS = await sendAll(service, bodies, connections);
    await analysed(client);
    return { acknowledged: count / sendingS, analysed: (1000 * count) / (performance.now() - started) };
  };
  // What was just started is slow at first, the floors too.
  await sendAll(rival('/bare'), ready, FLOOR.connections);
  await untilAnalysed(strokes(WARM_UP).map(one), WARM_UP, SINGLE.connections);
  rates.empty.push(FLOOR.requests / (await sendAll(rival('/empty'), ready, FLOOR.connections)));
  rates.bare.push(FLOOR.requests / (await sendAll(rival('/bare'), ready, FLOOR.connections)));
  const singles = strokes(SINGLE.strokes).map(one);
  const single = await untilAnalysed(singles, SINGLE.strokes, SINGLE.connections);
  rates.acknowledged.push(single.acknowledged);
  rates.single.push(single.analysed);
  const many = strokes(BATCHES.strokes);
  const batches = Array.from({ length: BATCHES.strokes / BATCHES.size }, (_, i) =>
    one(many.slice(i * BATCHES.size, (i + 1) * BATCHES.size)),
  );
  rates.batches.push((await untilAnalysed(batches, BATCHES.strokes, BATCHES.connections)).analysed);
  const rows = strokes(ROWS.strokes).map(one);
  rates.rows.push(ROWS.strokes / (await sendAll(rival('/rows'), rows, ROWS.connections)));
}

function linesOf(rates: Rates): Line[] {
  const bare = median(rates.bare);
  const single = median(rates.single);
  const batches = median(rates.batches);
  const rows = median(rates.rows);
  return [
    { what: 'bare INSERT of a ready row, requests a second', ratio: bare, aim: '' },
    { what: 'empty POST to bare INSERT', ratio: median(rates.empty) / bare, aim: '' },
    { what: 'one JSON stroke a request, acknowledged', ratio: median(rates.acknowledged) / bare, aim: '' },
    {
      what: 'one JSON stroke a request, 32 connections, until analysed',
      ratio: single / bare,
      aim: '>= 0.8',
    },
    { what: 'batches of 100 in JSON, 8 connections, until analysed', ratio: batches / bare, aim: '>= 1.0' },
    { what: 'a row for each sample', ratio: rows / bare, aim: '' },
    { what: 'one JSON stroke a request to a row for each sample', ratio: single / rows, aim: '>= 15' },
    { what: 'batches of 100 to a row for each sample', ratio: batches / rows, aim: '>= 15' },
  ];
}

/** Bytes on disk for each sample, every index, measure and checkpoint included, against a row for each. */
async function diskLine(serviceUrl: string, rivalsUrl: string): Promise<Line> {
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
  const ratio = Number(ours.bytes) / Number(theirs.bytes);
  return { what: 'bytes on disk to those of a row for each sample', ratio, aim: '<= 0.033' };
}
