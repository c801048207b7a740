import pg from 'pg';

/** As many connections as serve best on a machine of two cores. */
const POOL = 8;
const MEASURES_BYTES = 480;
const TRACE_BYTES = 4096;
const ROWS_AT_ONCE = 100;

/** What the database itself allows, nothing else in between: rows ready made of as many bytes as a stroke has. */
export interface Floors {
  /** Rows a second, one to a statement. */
  single(rows: number): Promise<number>;
  /** Rows a second, a hundred to a statement. */
  hundred(rows: number): Promise<number>;
  end(): Promise<void>;
}

export async function openFloors(databaseUrl: string): Promise<Floors> {
  const pool = new pg.Pool({ connectionString: databaseUrl, max: POOL });
  await pool.query(
    `create table floor (id bigint generated always as identity primary key, room integer, at timestamptz,
      measures bytea, trace bytea)`,
  );
  await pool.query('alter table floor alter column trace set storage external');
  const ready = [1, new Date(0), Buffer.alloc(MEASURES_BYTES, 7), Buffer.alloc(TRACE_BYTES, 7)];
  const statement = (rows: number) => {
    const places = (row: number) => ready.map((_, column) => `$${row * ready.length + column + 1}`).join();
    return {
      name: `floor-${rows}`,
      text: `insert into floor (room, at, measures, trace) values ${Array.from({ length: rows }, (_, row) => `(${places(row)})`)}`,
      values: Array.from({ length: rows }, () => ready).flat(),
    };
  };
  const rate = async (rows: number, atOnce: number) => {
    const query = statement(atOnce);
    let left = Math.ceil(rows / atOnce);
    const started = performance.now();
    const insert = async () => {
      while (left-- > 0) await pool.query(query);
    };
    await Promise.all(Array.from({ length: POOL }, insert));
    return (1000 * Math.ceil(rows / atOnce) * atOnce) / (performance.now() - started);
  };
  return {
    single: (rows) => rate(rows, 1),
    hundred: (rows) => rate(rows, ROWS_AT_ONCE),
    end: () => pool.end(),
  };
}
