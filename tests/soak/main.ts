import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import { startEmbeddedPostgres } from '../../server/database/embedded/startEmbeddedPostgres.ts';
import { createDatabase } from '../support/databases.ts';
import { startCrew } from './crew.ts';
import { type Caller, insist } from './insist.ts';
import type { Promised } from './senders.ts';
import { type Turmoil, turmoil } from './turmoil.ts';
import { answersOf, missingOf, placedIn, sendQuietly } from './verify.ts';
import type { Flatness } from './vitals.ts';
import type { Watcher } from './watchers.ts';

/**
 * `npm run soak -- --minutes N`: loggers, readers, watchers and people who record services keep several processes on one
 * database busy, while processes and the database are killed at random. At the end everything that was promised is
 * looked for, and compared with what a service says that got the same in order and in peace. Ends with 1 where anything
 * is not as it must be.
 */
const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '30' },
    seed: { type: 'string', default: '1' },
    'strokes-a-second': { type: 'string', default: '6' },
    'seconds-between-kills': { type: 'string', default: '20' },
    loggers: { type: 'string', default: '8' },
    readers: { type: 'string', default: '4' },
    watchers: { type: 'string', default: '8' },
  },
});

const ADMIN = { ADMIN_EMAIL: 'soak@example.com', ADMIN_PASSWORD: 'a long enough secret' };
/** What memory and handles may grow by from the second third of the run to the last. */
const MOST_GROWTH = 1.1;
/** Handles are few: some sockets more or less are no leak. */
const FEW_HANDLES = 4;
const WATCHERS_HEAR_WITHIN_MS = 60_000;

const faults: string[] = [];
const folder = await mkdtemp(join(tmpdir(), 'slideload-soak-'));
const postgres = await startEmbeddedPostgres(folder);
try {
  const { crew, person } = await newInstallation();
  const options = {
    minutes: Number(values.minutes),
    seed: Number(values.seed),
    strokesASecond: Number(values['strokes-a-second']),
    secondsBetweenKills: Number(values['seconds-between-kills']),
    loggers: Number(values.loggers),
    readers: Number(values.readers),
    watchers: Number(values.watchers),
  };
  const left = await turmoil(crew, person, join(folder, 'postgres'), options, faults);
  tell(left);
  for (const one of left.promised) faults.push(...(await missingOf(person, one)));
  console.log('All that was acknowledged was looked up.');
  await expectHeard(person, left.watchers);
  left.stopWatching();
  expectFlat(left.vitals);
  await compareWithPeace(person, left.promised);
  await crew.stop();
  faults.push(...crew.faults);
} finally {
  await postgres.stop();
  await rm(folder, { recursive: true });
}
for (const fault of faults.slice(0, 40)) console.error(`WRONG: ${fault}`);
if (faults.length > 0) {
  console.error(`${faults.length} things are not as they must be.`);
  process.exit(1);
}
console.log('Everything is as it must be.');

async function newInstallation() {
  const database = await createDatabase(postgres.url);
  const crew = await startCrew({ DATABASE_URL: database.url, ...ADMIN });
  const url = crew.anyUrl;
  const body = { email: ADMIN.ADMIN_EMAIL, password: ADMIN.ADMIN_PASSWORD };
  const answer = await insist({ url, token: '' }, 'POST', '/session', { body });
  return { crew, person: { url, token: String(answer.body.token) } };
}

function tell({ promised, ackMs, kills, statuses, watchers }: Turmoil): void {
  const sum = (count: (one: Promised) => number) => promised.reduce((total, one) => total + count(one), 0);
  const [strokes, services] = [sum((one) => one.strokes.size), sum((one) => one.services.size)];
  console.log(`${promised.length} rooms, ${strokes} strokes acknowledged, ${services} services recorded.`);
  console.log(`Killed: web ${kills.web}, worker ${kills.worker}, database ${kills.database} times.`);
  const sorted = [...ackMs].sort((one, other) => one - other);
  const within = (part: number) =>
    `${((sorted[Math.floor(part * (sorted.length - 1))] ?? 0) / 1000).toFixed(2)} s`;
  console.log(
    `Acknowledged within ${within(0.5)} (half), ${within(0.99)} (99 %), ${within(1)} (all of them).`,
  );
  const read = [...statuses].sort().map(([status, times]) => `${status || 'no answer'} ${times}`);
  console.log(`Readers got: ${read.join(', ')}.`);
  const reopened = watchers.reduce((total, watcher) => total + watcher.reopened, 0);
  console.log(`${watchers.length} watchers opened their feeds anew ${reopened} times.`);
}

/** Every watcher comes to know how its room stands at the end. */
async function expectHeard(person: Caller, watchers: readonly Watcher[]): Promise<void> {
  const deadline = performance.now() + WATCHERS_HEAR_WITHIN_MS;
  for (const watcher of watchers) {
    const { body } = await insist(person, 'GET', `/rooms/${watcher.roomId}/status`);
    const knows = () => watcher.strokes === body.strokes && watcher.pending === 0;
    while (!knows() && performance.now() < deadline) await pause(200);
    if (knows()) continue;
    const { strokes, pending } = watcher;
    faults.push(
      `A watcher was left behind: told of ${strokes} strokes (${pending} pending) of ${body.strokes}.`,
    );
  }
}

function expectFlat(vitals: readonly Flatness[]): void {
  for (const { who, what, second, last } of vitals) {
    console.log(`${who}, ${what}: ${second.toFixed(0)} in the second third, ${last.toFixed(0)} in the last.`);
    if (last > second * MOST_GROWTH + (what === 'handles' ? FEW_HANDLES : 0))
      faults.push(`${who} grew: ${what} ${second.toFixed(0)}, then ${last.toFixed(0)}.`);
  }
}

/** The same once more in a database of its own, without any trouble: all that is said must be the same. */
async function compareWithPeace(person: Caller, promised: readonly Promised[]): Promise<void> {
  const { crew, person: quietPerson } = await newInstallation();
  const quiet = await sendQuietly(quietPerson, promised, (one) => placedIn(person, one));
  let lines = 0;
  for (const [i, one] of promised.entries()) {
    const [said, expected] = [await answersOf(person, one), await answersOf(quietPerson, quiet[i])];
    lines += expected.length;
    const at = expected.findIndex((line, j) => line !== said[j]);
    if (at >= 0 || said.length !== expected.length)
      faults.push(differenceOf(one.room.name, said[at], expected[at]));
  }
  console.log(`${lines} answers compared with those of a service that was left in peace.`);
  await crew.stop();
}

function differenceOf(room: string, said = '', expected = ''): string {
  let at = 0;
  while (at < said.length && said[at] === expected[at]) at++;
  const around = (text: string) => text.slice(Math.max(0, at - 150), at + 150);
  return `${room}: ${expected.slice(0, 60)}\n  said     …${around(said)}\n  in peace …${around(expected)}`;
}
