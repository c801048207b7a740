import type { ClientBase } from 'pg';

/** Settings under which the same rows always have the same text, whatever the server's own are. */
export async function readSameText(client: ClientBase): Promise<void> {
  await client.query(`
    set local timezone = 'UTC';
    set local datestyle = 'ISO, YMD';
    set local intervalstyle = 'iso_8601';
    set local bytea_output = 'hex';
    set local extra_float_digits = 1;
    set local statement_timeout = 0;
  `);
}
