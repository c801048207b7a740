import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fillSmallDataSet, KEEPER, readSmallDataSet } from './smallDataSet.ts';

/**
 * Keeps a small data set as the running version of the service has it, for the test of upgrades:
 *
 *   DATABASE_URL=postgres://... node --import tsx tests/schemas/keep.ts http://127.0.0.1:8080 0012
 *
 * writes `0012.sql` (schema and rows, by `pg_dump` of the same Postgres) and `0012.json` (what the service said) beside
 * this file. The service at that address must run on that database, which was empty, with the person of
 * `smallDataSet.ts` as its first. The name is the number of the latest migration.
 */
const [url, name] = process.argv.slice(2);
const database = process.env.DATABASE_URL;
if (url === undefined || !/^\d{4}$/.test(name ?? '') || database === undefined) {
  console.error(
    `Start the service with ADMIN_EMAIL=${KEEPER.email} ADMIN_PASSWORD='${KEEPER.password}', then:`,
  );
  console.error('DATABASE_URL=... node --import tsx tests/schemas/keep.ts <address of the service> <number>');
  process.exit(2);
}
await fillSmallDataSet(url);
const said = await readSmallDataSet(url);
const file = (end: string) => `${import.meta.dirname}/${name}.${end}`;
// An address to a line, so that a change can be read.
const answers = Object.entries(said).map(
  ([path, body]) => `${JSON.stringify(path)}: ${JSON.stringify(body)}`,
);
writeFileSync(file('json'), `{\n${answers.join(',\n')}\n}\n`);
// Rows as INSERT, so that any client can restore them; not the queue, which keeps its own schema.
const options = ['--inserts', '--no-owner', '--no-privileges', '--no-comments', '--schema=public'];
const sql = execFileSync('pg_dump', [...options, database], { encoding: 'utf8' });
// Lines for another program than Postgres, and what an empty database has already.
const lines = sql
  .split('\n')
  .filter((line) => !/^(\\|--|CREATE SCHEMA public|SET transaction_timeout)/.test(line));
writeFileSync(
  file('sql'),
  `${lines
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim()}\n`,
);
