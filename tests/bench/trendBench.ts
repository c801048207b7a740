import pg from 'pg';
import { MEASURES } from '../../analysis/measures.ts';
import { sendRequest } from '../support/request.ts';
import { withPostgres } from './benchPostgres.ts';
import { startChild } from './childProcess.ts';
import { type BenchFleet, makeFleet } from './fleet.ts';
import { median } from './median.ts';
import type { Line } from './table.ts';

const STROKES = 10_000;
const ROUNDS = 9;

/** The trend as a page asks for it, over HTTP, against reading the same columns through the driver into objects. */
export function trendBench(): Promise<Line[]> {
  return withPostgres(async ({ newDatabase }) => {
    const url = await newDatabase('service');
    const service = await startChild('serviceProcess.ts', { DATABASE_URL: url });
    const client = new pg.Client(url);
    try {
      const fleet = await makeFleet(String(service.said.url), 1);
      await client.connect();
      await fill(client, fleet.rooms[0]);
      const [ours, driver]: [number[], number[]] = [[], []];
      for (let round = 0; round < ROUNDS; round++) {
        ours.push(await timed(() => askTrend(fleet)));
        driver.push(await timed(() => readColumns(client, fleet.rooms[0])));
      }
      return [
        { what: 'the trend over HTTP, ms', ratio: median(ours), aim: '' },
        {
          what: 'times faster than plain columns through the driver',
          ratio: median(driver) / median(ours),
          aim: '>= 2',
        },
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
     select account_id, gen_random_uuid(), id, id, n::text, 'extend', '2020-01-01'::timestamptz + n * '1 hour'::interval,
       sides, false from rooms, generate_series(1, $2::integer) n where id = $1`,
    [roomId, STROKES],
  );
  await client.query(
    `insert into measures (account_id, room_id, side, direction, placed_at, stroke_id, value, expected, adjusted, beyond)
     select account_id, room_id, 'front', 'extend', started_at, id, ${numbers}, ${numbers}, ${numbers},
       array_fill(false, array[${MEASURES.length}])
     from (select *, key::integer as n from strokes where room_id = $1) s`,
    [roomId],
  );
  await client.query('vacuum analyze measures');
}

async function askTrend(fleet: BenchFleet): Promise<number> {
  const path = `/rooms/${fleet.rooms[0]}/trend?measure=runningAmps&direction=extend&side=front`;
  const { body } = await sendRequest(fleet.url, 'GET', path, { token: fleet.person });
  return body.points.length;
}

async function readColumns(client: pg.Client, roomId: string): Promise<number> {
  const { rows } = await client.query(
    `select stroke_id, placed_at, value[1] as v, value[2] as v2, value[3] as v3, expected[1] as e, adjusted[1] as a,
       beyond[1] as b from measures where room_id = $1 and side = 'front' and direction = 'extend' order by placed_at`,
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
