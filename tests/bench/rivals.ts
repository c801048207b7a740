import { createServer, type IncomingMessage } from 'node:http';
import pg from 'pg';

/**
 * What the service is measured against, in a process of its own: an empty POST, a bare INSERT of a ready row of the
 * same bytes for each request, and what people write first, a row for each sample. Prints its port.
 */
const CONNECTIONS = 8;
const MEASURES_BYTES = 480;

const pool = new pg.Pool({ connectionString: process.env.DATABASE_URL, max: CONNECTIONS });
await pool.query(`create table bare (id bigint generated always as identity primary key, room integer, at timestamptz,
  measures bytea, trace bytea)`);
await pool.query('alter table bare alter column trace set storage external');
await pool.query(`create table samples (stroke bigint, side smallint, n integer, t double precision,
  amps double precision, primary key (stroke, side, n))`);
let strokes = 0;

const work: Record<string, (body: Buffer) => Promise<unknown>> = {
  '/empty': async () => undefined,
  '/bare': (body) =>
    pool.query({
      name: 'bare',
      text: 'insert into bare (room, at, measures, trace) values ($1, now(), $2, $3)',
      values: [1, body.subarray(0, MEASURES_BYTES), body.subarray(MEASURES_BYTES)],
    }),
  '/rows': async (body) => {
    const stroke = strokes++;
    const { sides } = JSON.parse(body.toString());
    const columns: number[][] = [[], [], [], []];
    for (const [side, { rateHz, amps }] of sides.entries()) {
      for (let i = 0; i < amps.length; i++) {
        columns[0].push(side);
        columns[1].push(i);
        columns[2].push(i / rateHz);
        columns[3].push(amps[i]);
      }
    }
    await pool.query(
      `insert into samples select $1, * from unnest($2::smallint[], $3::integer[], $4::float8[], $5::float8[])`,
      [stroke, ...columns],
    );
  },
};

const server = createServer((incoming, answer) => {
  read(incoming)
    .then((body) => work[incoming.url ?? '/empty'](body))
    .then(() => answer.end('{}'))
    .catch((error: unknown) => answer.writeHead(500).end(String(error)));
});

async function read(incoming: IncomingMessage): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const part of incoming) parts.push(part);
  return Buffer.concat(parts);
}

server.listen(0, '127.0.0.1', () => {
  const address = server.address();
  if (typeof address === 'object' && address) console.log(JSON.stringify({ port: address.port }));
});
