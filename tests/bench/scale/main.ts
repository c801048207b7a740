import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { startEmbeddedPostgres } from '../../../server/database/embedded/startEmbeddedPostgres.ts';
import { PLAIN_OWNER } from '../../../server/database/plainOwnerUrl.ts';
import { createDatabase } from '../../support/databases.ts';
import { sendRequest } from '../../support/request.ts';
import { startChild } from '../childProcess.ts';
import { analysed } from '../fleet.ts';
import { median } from '../median.ts';
import { type Line, printTable } from '../table.ts';
import { bytesOf } from './bytes.ts';
import { copiedIds, copyCoach } from './copies.ts';
import { type ModelCoach, makeModelCoach, STROKES, strokeOf } from './model.ts';
import { beginListening, grownTables, plansHeard } from './plans.ts';
import { questionsOf } from './questions.ts';

/**
 * `npm run bench:scale -- [10 100 1000]`: what pages, one stroke and its analysis cost with so many coaches of two years
 * each in one account, against the smallest fleet; and how Postgres finds what each page asks for in the largest.
 */
const given = process.argv.slice(2).map(Number);
const SIZES = given.length > 0 ? given : [10, 100, 1000];
const ROUNDS = 25;
const AIM = '<= 1.5';
/**
 * A table with fewer rows may be read whole: a lot of coaches in order of concern is a question about every coach and
 * room of the account, and few pages are sooner read than looked up a hundred times. What grows with strokes may not.
 */
const GROWN_FROM = 20_000;

interface Size {
  readonly coaches: number;
  readonly model: ModelCoach;
  readonly client: pg.Client;
  readonly ms: Map<string, number[]>;
  readonly stop: () => Promise<void>;
}

const folder = await mkdtemp(join(tmpdir(), 'slideload-scale-'));
const settings = { shared_preload_libraries: 'pg_stat_statements' };
const postgres = await startEmbeddedPostgres(folder, { settings });
const sizes: Size[] = [];
let readWhole = 0;
try {
  for (const coaches of SIZES) {
    sizes.push(await grow(coaches));
    console.log(`${coaches} coaches are there.`);
  }
  // In turns: what else the machine does meets all of them alike.
  for (let round = 0; round < ROUNDS; round++) for (const size of sizes) await askOnce(size, round);
  for (const [what, spent] of sizes[0].ms)
    console.log(`${SIZES[0]} coaches: ${what}: ${median(spent).toFixed(1)} ms`);
  printTable(`What it costs, against ${SIZES[0]} coaches`, linesOf(sizes));
  console.log(`\nWhat it takes on disk with ${SIZES[SIZES.length - 1]} coaches`);
  for (const { thing, things, bytes } of await bytesOf(sizes[sizes.length - 1].client))
    console.log(`  ${thing}: ${(bytes / things).toFixed(0)} bytes (${things} of them)`);
  readWhole = await printPlans(sizes[sizes.length - 1]);
} finally {
  for (const size of sizes) await size.stop();
  await postgres.stop();
  await rm(folder, { recursive: true });
}
if (readWhole > 0) process.exit(1);

async function grow(coaches: number): Promise<Size> {
  const database = await createDatabase(postgres.url);
  const service = await startChild('serviceProcess.ts', { DATABASE_URL: database.url });
  const model = await makeModelCoach(String(service.said.url));
  const client = new pg.Client(database.url);
  await client.connect();
  await copyCoach(client, coaches);
  return {
    coaches,
    model,
    client,
    ms: new Map(),
    stop: async () => {
      await client.end();
      await service.stop();
      await database.drop();
    },
  };
}

/** Every page once, with all that it asks, each time of another coach. */
async function askOnce(size: Size, round: number): Promise<void> {
  const { coaches, model, client } = size;
  const things = await thingsOf(size, 1 + ((round * 37) % (coaches - 1)));
  const questions = questionsOf(things);
  for (const page of new Set(questions.map(({ what }) => what)))
    await timed(size, page, async () => {
      for (const { path } of questions.filter(({ what }) => what === page)) {
        const { status, text } = await sendRequest(model.url, 'GET', path, { token: model.person });
        if (status !== 200) throw new Error(`${path} answered ${status}: ${text}`);
      }
    });
  const body = strokeOf(things.roomId, STROKES + Math.floor(round / (coaches - 1)));
  await timed(size, 'one stroke, until it is acknowledged', async () => {
    const answer = await sendRequest(model.url, 'POST', '/strokes', { token: model.person, body });
    if (answer.body?.results?.[0]?.outcome !== 'stored') throw new Error(`Not stored: ${answer.text}`);
  });
  await timed(size, 'and until it is analysed', () => analysed(client));
}

async function thingsOf({ client, model }: Size, n: number) {
  const { coachId, roomId, strokeId, serviceId } = model;
  const ids = await copiedIds(client, [coachId, roomId, strokeId, serviceId], n);
  return { coachId: ids[0], roomId: ids[1], strokeId: ids[2], serviceId: ids[3], verdict: model.verdict };
}

async function timed({ ms }: Size, what: string, work: () => Promise<void>): Promise<void> {
  const started = performance.now();
  await work();
  const spent = ms.get(what) ?? [];
  ms.set(what, [...spent, performance.now() - started]);
}

function linesOf([smallest, ...others]: readonly Size[]): Line[] {
  return others.flatMap(({ coaches, ms }) =>
    [...ms].map(([what, spent]) => ({
      what: `${coaches} coaches: ${what}`,
      ratio: median(spent) / median(smallest.ms.get(what) ?? []),
      aim: AIM,
    })),
  );
}

/** Answers how many statements read a table that grows from end to end. */
async function printPlans(size: Size): Promise<number> {
  const { client, model, coaches } = size;
  const grown = await grownTables(client, GROWN_FROM);
  console.log(
    `\nHow it is found among ${coaches} coaches (tables of ${GROWN_FROM} rows and more: ${[...grown].join(', ')})`,
  );
  let count = 0;
  const things = await thingsOf(size, 1);
  const questions = questionsOf(things);
  const tell = async (what: string, ask: () => Promise<unknown>) => {
    await beginListening(client);
    await ask();
    const plans = await plansHeard(client, PLAIN_OWNER);
    const whole = plans.filter(({ wholeTables }) => wholeTables.some((table) => grown.has(table)));
    count += whole.length;
    const indexes = [...new Set(plans.flatMap((plan) => plan.indexes))].sort();
    const slowest = plans.toSorted((one, other) => other.ms - one.ms)[0];
    console.log(
      `  ${what}: ${plans.length} statements by ${indexes.join(', ') || 'no index'}; the slowest ${slowest.ms.toFixed(1)} ms: ${slowest.statement.slice(-60)}`,
    );
    for (const { statement, problem } of plans)
      if (problem !== null) console.log(`    not planned (${problem}): ${statement.slice(0, 200)}`);
    for (const { statement, wholeTables } of whole)
      console.log(`    READS ${wholeTables.join(', ')} WHOLE: ${statement.slice(0, 300)}`);
  };
  for (const page of new Set(questions.map(({ what }) => what)))
    await tell(page, async () => {
      for (const { what, path } of questions)
        if (what === page) await sendRequest(model.url, 'GET', path, { token: model.person });
    });
  await tell('a stroke that comes in, and its analysis', async () => {
    const body = strokeOf(things.roomId, STROKES + ROUNDS);
    await sendRequest(model.url, 'POST', '/strokes', { token: model.person, body });
    await analysed(client);
  });
  return count;
}
