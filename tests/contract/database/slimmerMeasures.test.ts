import pg from 'pg';
import { expect, inject, test } from 'vitest';
import { MIGRATIONS } from '../../../migrations/index.ts';
import { migrate, migrateTo } from '../../../server/database/migrate.ts';
import { openDatabase } from '../../../server/database/openDatabase.ts';
import { plainOwnerUrl } from '../../../server/database/plainOwnerUrl.ts';
import { createDatabase } from '../../support/databases.ts';

const BEFORE = Object.keys(MIGRATIONS).filter((name) => name < '0025');
const ID = '018f4d5e-0000-7000-8000-000000000000';

/** A row as it was, of three measures. */
const FILL = [
  `insert into accounts (id, name) values ('${ID}', 'Alder')`,
  `insert into coaches (account_id, id, name) values ('${ID}', '${ID}', 'Alder 7')`,
  `insert into rooms (account_id, id, coach_id, name, drive, sides)
   values ('${ID}', '${ID}', '${ID}', 'Den', 'cable', '{main}')`,
  `insert into strokes (account_id, id, room_id, sender_id, key, direction, started_at, placed_at, recorded_sides, has_supply)
   values ('${ID}', '${ID}', '${ID}', '${ID}', 'one', 'extend', now(), now(), '{main}', false)`,
  `insert into measures (account_id, room_id, side, direction, placed_at, stroke_id, value, expected, adjusted, beyond)
   values ('${ID}', '${ID}', 'main', 'extend', now(), '${ID}', '{8.982870588235293,1e-300,null}',
     '{8.912345678901234,1e-300,1e300}', '{NaN,-1e-300,26.95487058823529}', '{null,false,true}')`,
];

test('measures of before are kept with fewer digits of what was foreseen, also those that single precision cannot hold', async () => {
  const database = await createDatabase(inject('postgresUrl'));
  const opened = openDatabase(await plainOwnerUrl(database.url, console.error));
  const client = new pg.Client(database.url);
  await client.connect();
  try {
    await migrateTo(opened, BEFORE);
    for (const statement of FILL) await client.query(statement);
    await migrate(opened);
    const { rows } = await client.query('select value, expected, adjusted, beyond from measures');
    expect(rows).toEqual([
      {
        value: [8.982870588235293, 1e-300, null],
        expected: [8.912346, 0, null],
        adjusted: [null, 0, 26.95487],
        beyond: 4,
      },
    ]);
  } finally {
    await client.end();
    await opened.pool.end();
    await database.drop();
  }
});
