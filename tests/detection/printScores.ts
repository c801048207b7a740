import { median } from '../../analysis/statistics/median.ts';
import { addCounts, type BeyondCounts } from './beyondRates.ts';
import { isDrift, type RoomScore } from './scoreFleet.ts';

/** Strokes that a room makes in a year. */
const STROKES_A_YEAR = 60;

/** Prints how a fleet was judged: a row for each fault, missed ones by seed, false warnings, healthy strokes beyond. */
export function printScores(scores: readonly RoomScore[]): void {
  printFaults(scores.filter((score) => score.fault !== null));
  printFalse(scores);
  printBeyond(addCounts(scores.map((score) => score.beyond)));
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
  for (const { fault, seed } of scores.filter(({ found, rightKind }) => found && !rightKind)) {
    console.log(`wrong kind: ${fault}, seed ${seed}`);
  }
  printDrifts(scores.filter(({ fault }) => isDrift(fault)));
  const over = scores.filter(({ isOver }) => isOver);
  console.log(`rooms of whose fault nothing is said at the end any more: ${over.length} of ${scores.length}`);
  for (const { fault, seed } of over) console.log(`  ${fault}, seed ${seed}`);
  const besides = scores.filter((score) => score.besides.length > 0);
  console.log(
    `rooms with a further warning that the fault does not explain: ${besides.length} of ${scores.length}`,
  );
  for (const { fault, seed, besides: others } of besides)
    console.log(`  ${fault}, seed ${seed}: ${others.join('; ')}`);
}

/** One that was never said counts as said after all others. */
function printDrifts(drifts: readonly RoomScore[]): void {
  if (drifts.length === 0) return;
  const said = drifts.map(({ driftWhenFound }) => driftWhenFound ?? Number.POSITIVE_INFINITY);
  const latest = Math.max(0, ...said.filter(Number.isFinite));
  const never = said.filter((drift) => !Number.isFinite(drift)).length;
  console.log(
    `drifts: ${said.length}, said at ${percent(median(said))} (median), ${percent(latest)} (latest), never ${never}`,
  );
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

/** The aim is 1 healthy stroke in 400, 0.25 %, of every measure. */
function printBeyond(counts: BeyondCounts): void {
  console.log('healthy values beyond their limits (aim 0.25 %):');
  for (const [name, { judged, beyond }] of Object.entries(counts)) {
    const rate = judged === 0 ? '-' : `${((100 * beyond) / judged).toFixed(2)} %`;
    console.log(`  ${name.padEnd(18)}${rate.padStart(8)} of ${judged}`);
  }
}

function percent(part: number): string {
  return `${(100 * part).toFixed(1)} %`;
}
