import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { median } from '../../analysis/statistics/median.ts';
import type { RoomScore } from './scoreFleet.ts';

/** Strokes that a room makes in a year. */
const STROKES_A_YEAR = 60;

const { values } = parseArgs({
  options: {
    rooms: { type: 'string', default: '200' },
    strokes: { type: 'string', default: '240' },
    seed: { type: 'string', default: '2026' },
  },
});

/** Plays a seeded fleet, half of it faulty, on all cores and prints how the faults were found, missed ones by seed. */
async function main(): Promise<void> {
  const parts = Math.max(1, availableParallelism());
  const scores = (
    await Promise.all(Array.from({ length: parts }, (_, part) => playPart(part, parts)))
  ).flat();
  const seen = scores.filter((score) => score !== null);
  printFaults(seen.filter((score) => score.fault !== null));
  printFalse(seen);
  const unseen = scores.length - seen.length;
  if (unseen > 0) console.log(`${unseen} rooms with a weak supply that nobody recorded are left out.`);
}

function playPart(part: number, parts: number): Promise<(RoomScore | null)[]> {
  return new Promise((resolve, reject) => {
    const words = [values.seed, values.rooms, values.strokes, String(part), String(parts)];
    const child = fork(new URL('./worker.ts', import.meta.url), words, { execArgv: ['--import', 'tsx'] });
    const scores: (RoomScore | null)[] = [];
    // Sent by worker.ts, which sends nothing else.
    child.on('message', (score) => scores.push(score as RoomScore | null));
    child.on('error', reject);
    child.on('exit', (code) =>
      code === 0 ? resolve(scores) : reject(new Error(`part ${part} ended with ${code}`)),
    );
  });
}

function printFaults(scores: readonly RoomScore[]): void {
  const rows = [...new Set(scores.map(({ fault }) => fault))].sort().map((name) => {
    const own = scores.filter(({ fault }) => fault === name);
    return [String(name), ...columns(own)];
  });
  rows.push(['all', ...columns(scores)]);
  const head = ['fault', 'rooms', 'found', 'kind', 'side', 'pattern', 'strokes', 'place'];
  for (const row of [head, ...rows]) {
    console.log(row.map((cell, i) => (i === 0 ? cell.padEnd(24) : cell.padStart(9))).join(''));
  }
  for (const { fault, seed } of scores.filter(({ found }) => !found))
    console.log(`missed: ${fault}, seed ${seed}`);
  for (const { fault, seed } of scores.filter(({ found, rightSide }) => found && !rightSide)) {
    console.log(`wrong side: ${fault}, seed ${seed}`);
  }
  const drifts = scores.map(({ driftWhenFound }) => driftWhenFound).filter((drift) => drift !== null);
  if (drifts.length > 0) {
    console.log(
      `drifts: said at ${percent(median(drifts))} (median), ${percent(Math.max(...drifts))} (latest)`,
    );
  }
  const besides = scores.filter((score) => score.besides.length > 0);
  console.log(
    `rooms with a further warning that the fault does not explain: ${besides.length} of ${scores.length}`,
  );
  for (const { fault, seed, besides: others } of besides)
    console.log(`  ${fault}, seed ${seed}: ${others.join('; ')}`);
}

function columns(scores: readonly RoomScore[]): string[] {
  const found = scores.filter((score) => score.found);
  const part = (is: (score: RoomScore) => boolean, of: readonly RoomScore[]) =>
    of.length === 0 ? '-' : percent(of.filter(is).length / of.length);
  const middle = (list: (number | null)[]) => list.filter((value) => value !== null);
  const strokes = middle(found.map(({ strokesToFind }) => strokesToFind));
  const places = middle(found.map(({ placeError }) => placeError));
  return [
    String(scores.length),
    percent(found.length / scores.length),
    part((score) => score.rightKind, found),
    part((score) => score.rightSide, found),
    part((score) => score.rightPattern, found),
    strokes.length > 0 ? String(median(strokes)) : '-',
    places.length > 0 ? percent(median(places)) : '-',
  ];
}

function printFalse(scores: readonly RoomScore[]): void {
  const warnings = scores.flatMap((score) =>
    score.falseWarnings.map((name) => `  seed ${score.seed}: ${name}`),
  );
  const years = scores.reduce((sum, score) => sum + score.healthyStrokes, 0) / STROKES_A_YEAR;
  console.log(
    `false warnings: ${warnings.length} in ${Math.round(years)} room-years, ${(warnings.length / years).toFixed(3)} a room-year`,
  );
  for (const line of warnings) console.log(line);
}

function percent(part: number): string {
  return `${(100 * part).toFixed(1)} %`;
}

await main();
