import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { describe, expect, inject, test } from 'vitest';
import { MIGRATIONS } from '../../../migrations/index.ts';
import { migrate } from '../../../server/database/migrate.ts';
import { openDatabase } from '../../../server/database/openDatabase.ts';
import { plainOwnerUrl } from '../../../server/database/plainOwnerUrl.ts';
import { readSmallDataSet, type Said, signInAsKeeper } from '../../schemas/smallDataSet.ts';
import { createDatabase } from '../../support/databases.ts';
import { startService, type TestService } from '../../support/service.ts';
import { settled } from '../strokes/strokeFixture.ts';

/** Data sets as earlier versions of the service had them, kept by `tests/schemas/keep.ts`. */
const FOLDER = join(import.meta.dirname, '../../schemas');
const KEPT = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.sql'))
  .map((name) => name.slice(0, 4));

const read = (name: string) => readFileSync(join(FOLDER, name), 'utf8');

/**
 * What is said in another way today: a stroke that was not judged was `beyond: null`, and a stroke's sides were names.
 */
function asSaidToday(this: object, name: string, value: unknown): unknown {
  if (name === 'beyond') return value === true;
  const areOfStroke = name === 'sides' && 'hasSupply' in this && Array.isArray(value);
  return areOfStroke ? value.map((side) => ({ side })) : inSinglePrecision(name, value);
}

/** What was foreseen and what was brought to common conditions have fewer digits since they are stored with seven. */
function inSinglePrecision(name: string, value: unknown): unknown {
  const isEstimate = (name === 'expected' || name === 'adjusted') && typeof value === 'number';
  return isEstimate ? Math.fround(value) : value;
}

/** The service of today on a database of then, brought up to date as at a start. */
async function upgraded(kept: string, worker: boolean): Promise<TestService> {
  const database = await createDatabase(inject('postgresUrl'));
  const client = new pg.Client(database.url);
  await client.connect();
  await client.query(read(`${kept}.sql`)).finally(() => client.end());
  const opened = openDatabase(await plainOwnerUrl(database.url, console.error));
  await migrate(opened).finally(() => opened.pool.end());
  return startService({ database, firstPerson: false, worker });
}

test('there are data sets of the first release and of a later one', () => {
  expect(KEPT.length).toBeGreaterThanOrEqual(2);
  for (const number of KEPT)
    expect(Object.keys(MIGRATIONS).filter((name) => name.startsWith(number))).toHaveLength(1);
});

describe.each(KEPT)('a database as it was after migration %s', (kept) => {
  test('says through the API what it said then', async () => {
    const service = await upgraded(kept, false);
    try {
      // Written by `keep.ts` and nobody else.
      const then = JSON.parse(read(`${kept}.json`), asSaidToday) as Said;
      const answers = await readSmallDataSet(service.url);
      const now: Said = JSON.parse(JSON.stringify(answers), inSinglePrecision);
      expect(Object.keys(now)).toEqual(Object.keys(then));
      for (const [path, said] of Object.entries(then)) expect(now[path], path).toMatchObject(said);
    } finally {
      await service.stop();
    }
  });

  test('has its results made anew from what was sent, and takes further strokes', async () => {
    const service = await upgraded(kept, true);
    try {
      const token = await signInAsKeeper(service.url);
      const said = await readSmallDataSet(service.url);
      const [roomId] = Object.keys(said).flatMap((path) => /^\/rooms\/(.*)\/services$/.exec(path)?.[1] ?? []);
      const strokes = said[`/rooms/${roomId}/strokes?limit=500`] as { items: object[] };
      const { pending, strokes: count } = await settled(service, token, roomId);
      expect([pending, count]).toEqual([0, strokes.items.length]);
      const further = {
        key: 'a further one',
        roomId,
        direction: 'extend',
        startedAt: '2026-09-01T10:00:00Z',
        sides: [{ side: 'front', rateHz: 10, amps: Array(100).fill(5) }],
      };
      const { body } = await service.as(token, 'POST', '/strokes', further);
      expect(body.results[0].outcome).toBe('stored');
      expect((await settled(service, token, roomId)).strokes).toBeGreaterThanOrEqual(count);
    } finally {
      await service.stop();
    }
  });
});
