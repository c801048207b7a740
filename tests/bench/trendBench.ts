import pg from 'pg';
import { MEASURES } from '../../analysis/measures.ts';
import { sendRequest } from '../support/request.ts';
import { withPostgres } from './benchPostgres.ts';
import { type BenchFleet, makeFleet } from './fleet.ts';
import { median } from './median.ts';
import { startBenchService } from './startBenchService.ts';
import type { Line } from './table.ts';

const STROKES = 10_000;
/** The first are to warm up, as a service runs for months. */
const WARM_UP = 20;
const ROUNDS = 15;

/** What the room page asks for on a large screen. */
const POINTS = 800;
/** As browsers say over https. */
const AS_BROWSERS = { 'accept-encoding': 'gzip, deflate, br' };

/** The trend over HTTP, as a page asks for it and whole, against reading its columns through the driver into objects. */
export function trendBench(): Promise<Line[]> {
  return withPostgres(async ({ newDatabase }) => {
    const url = await newDatabase('service');
    const service = await startBenchService(url);
    const client = new pg.Client(url);
    try {
      const fleet = await makeFleet(String(service.said.url), 1);
      await client.connect();
      await fill(client, fleet.rooms[0]);
      const [page, whole, driver]: number[][] = [[], [], []];
      for (let round = 0; round < WARM_UP + ROUNDS; round++) {
        page.push(await timed(() => askTrend(fleet, `&points=${POINTS}`)));
        whole.push(await timed(() => askTrend(fleet, '')));
        driver.push(await timed(() => readColumns(client, fleet.rooms[0])));
      }
      const middle = (times: number[]) => median(times.slice(WARM_UP));
      return [
        { what: 'plain columns through the driver, ms', ratio: middle(driver), aim: '' },
        {
          what: 'times faster: the trend over HTTP as the page asks for it',
          ratio: middle(driver) / middle(page),
          aim: '>= 2',
        },
        { what: 'times faster: every point of it', ratio: middle(driver) / middle(whole), aim: '' },
      ];
    } finally {
      await client.end();
      await service.stop();
    }
  });
}

async function fill(client: pg.Client, roomId: string): Promise<void> {
  const numbers = `(select array_agg(random() * 10) from generate_series(1, ${MEASURES.length}) where n > 0)`;
  await client.query(
    `insert into strokes (account_id, id, room_id, sender_id, key, direction, started_at, placed_at, recorded_sides,
       has_supply)
     select account_id, gen_random_uuid(), id, id, n::text, 'extend', at, at, sides, false
     from rooms, generate_series(1, $2::integer) n, lateral (select '2020-01-01'::timestamptz + n * '1 hour'::interval as at) t
     where id = $1`,
    [roomId, STROKES],
  );
  await client.query(
    `insert into measures (account_id, room_id, side, direction, placed_at, stroke_id, value, expected, adjusted, beyond)
     select account_id, room_id, 'front', 'extend', started_at, id, ${numbers}, ${numbers}, ${numbers},
       0
     from (select *, key::integer as n from strokes where room_id = $1) s`,
    [roomId],
  );
  await client.query('vacuum analyze measures');
}

/** Answers how many strokes it tells of. */
async function askTrend(fleet: BenchFleet, query: string): Promise<number> {
  const path = `/rooms/${fleet.rooms[0]}/trend?measure=runningAmps&direction=extend&side=front${query}`;
  const { body } = await sendRequest(fleet.url, 'GET', path, {
    token: fleet.person,
    headers: AS_BROWSERS,
  });
  return body.thinned?.points ?? body.points.length;
}

async function readColumns(client: pg.Client, roomId: string): Promise<number> {
  const { rows } = await client.query(
    `select stroke_id, placed_at, value[1] as v, value[2] as v2, value[3] as v3, expected[1] as e, adjusted[1] as a,
       beyond & 1 <> 0 as b from measures where room_id = $1 and side = 'front' and direction = 'extend' order by placed_at`,
    [roomId],
  );
  return rows.length;
}

async function timed(work: () => Promise<number>): Promise<number> {
  const started = performance.now();
  const count = await work();
  if (count !== STROKES) throw new Error(`${count} points instead of ${STROKES}.`);
  return performance.now() - started;
}
