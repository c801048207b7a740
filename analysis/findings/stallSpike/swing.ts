import { linearRegression } from 'simple-statistics';
import { goertzel } from '../../statistics/goertzel.ts';

/** A regular swing of one stroke's current along the travel, against the side's usual profile. */
export interface Swing {
  /** Periods over the whole travel. */
  readonly cycles: number;
  /** Amplitude as a part of the current. */
  readonly part: number;
}

interface Least {
  /** A swing below this part of the current is within what sound gears do. */
  readonly part: number;
  /** The swing makes up at least this part of the mean square of what differs from usual. */
  readonly explained: number;
}

/**
 * Where the gear's turn is known, a swing is looked for at that period alone, and a smaller one counts: sound gears
 * hardly change theirs, by at most 1.3 % in three of four strokes of 148 sides of simulated rooms.
 */
const LEAST_KNOWN: Least = { part: 0.035, explained: 0.35 };
const LEAST_UNKNOWN: Least = { part: 0.06, explained: 0.5 };
/** Fewer periods over the travel are its slow course, more are too fine for the profile's bins. */
const FEWEST_CYCLES = 2.5;
const MOST_CYCLES = 16;
const CYCLES_STEP = 0.25;
/** Where the gear's turn is known, fewer and more periods can be told. */
const FEWEST_KNOWN = 1.5;
const MOST_KNOWN = 2 * MOST_CYCLES;
/**
 * A mean square below this part of the least swing's holds no swing, and is not searched. A little less than 1, because
 * noise adds to it or takes off it. A guess, no source.
 */
const NO_SWING = 0.8;
/**
 * Position is estimated from time or from a model of the speed: a known period is looked for a little to both sides of
 * it.
 */
const STRETCHES = [0.94, 0.97, 1, 1.03, 1.06] as const;
/**
 * Of the latest four strokes at least three show the same swing, with periods that differ by no more than this part.
 */
const OF_LATEST = 4;
const LEAST_STROKES = 3;
const ALIKE = 0.1;

/**
 * The strongest regular swing of a profile about the usual one; null where there is none to speak of. `profile` and
 * `usual`: amps by bin of travel, null where nothing was measured; `turn`: the part of the travel that the gear rolls
 * off in one turn, null where nobody wrote it down.
 */
export function swingOf(
  profile: readonly (number | null)[],
  usual: readonly (number | null)[],
  turn: number | null,
): Swing | null {
  const differences = detrended(profile, usual);
  if (differences === null) return null;
  const { values, meanSquare } = differences;
  const least = turn === null ? LEAST_UNKNOWN : LEAST_KNOWN;
  // A sine's mean square is half of its amplitude's.
  if (meanSquare < (NO_SWING * least.part ** 2) / 2) return null;
  let best: Swing | null = null;
  for (const cycles of candidates(turn)) {
    const part = goertzel(values, cycles / values.length).amplitude;
    if (best === null || part > best.part) best = { cycles, part };
  }
  if (best === null || best.part < least.part) return null;
  return best.part ** 2 / 2 / meanSquare >= least.explained ? best : null;
}

/** The step between the lengths of way that are tried, parts of the travel: at most a third of the finest period. */
const WAY_STEP = 0.01;
/**
 * A shorter way fits if it leaves at most this part of the mean square of what differs from usual: a guess, no source.
 */
const MOST_LEFT = 0.5;

/**
 * Whether a swing is only the usual profile laid over a way that was not the whole: the stroke went over a part of the
 * travel, at least `shortest` of it, from or to either end, and against the usual profile of that part there is no
 * swing left and little else. The other arguments are those of `swingOf`.
 */
export function isOfShortWay(
  profile: readonly (number | null)[],
  usual: readonly (number | null)[],
  turn: number | null,
  shortest: number,
): boolean {
  const whole = detrended(profile, usual)?.meanSquare ?? 0;
  for (let length = 1 - WAY_STEP; length >= shortest; length -= WAY_STEP) {
    for (const inner of [0, 1 - length]) {
      const part = profile.map((_, bin) => valueAt(usual, inner * usual.length + length * (bin + 0.5)));
      const left = detrended(profile, part)?.meanSquare ?? whole;
      if (left > MOST_LEFT * whole) continue;
      if (swingOf(profile, part, turn === null ? null : turn / length) === null) return true;
    }
  }
  return false;
}

/** A profile's value at a place between the middles of its bins, which lie at halves; null beside a gap. */
function valueAt(profile: readonly (number | null)[], place: number): number | null {
  const at = Math.min(profile.length - 1, Math.max(0, place - 0.5));
  const below = profile[Math.floor(at)];
  const above = profile[Math.ceil(at)];
  if (below === null || above === null) return null;
  return below + (at - Math.floor(at)) * (above - below);
}

function candidates(turn: number | null): number[] {
  if (turn === null) {
    const count = (MOST_CYCLES - FEWEST_CYCLES) / CYCLES_STEP + 1;
    return Array.from({ length: count }, (_, i) => FEWEST_CYCLES + i * CYCLES_STEP);
  }
  return STRETCHES.map((stretch) => stretch / turn).filter(
    (cycles) => cycles >= FEWEST_KNOWN && cycles <= MOST_KNOWN,
  );
}

/**
 * How far each bin lies above its usual current, as a part of it, less a straight line through all; 0 for gaps. Null
 * where more than half of the bins are gaps.
 */
function detrended(
  profile: readonly (number | null)[],
  usual: readonly (number | null)[],
): { values: Float64Array; meanSquare: number } | null {
  const bins: [x: number, y: number][] = [];
  profile.forEach((amps, x) => {
    const normal = usual[x] ?? null;
    if (amps !== null && normal !== null && normal > 0) bins.push([x, amps / normal - 1]);
  });
  if (bins.length < profile.length / 2) return null;
  const { m: slope, b: start } = linearRegression(bins);
  const values = new Float64Array(profile.length);
  let squares = 0;
  for (const [x, y] of bins) {
    values[x] = y - start - slope * x;
    squares += values[x] ** 2;
  }
  return { values, meanSquare: squares / bins.length };
}

/**
 * The swing that the latest strokes share; null: none. `swings`: one for each stroke, oldest first, null for one
 * without.
 */
export function sharedSwing(
  swings: readonly (Swing | null)[],
): (Swing & { readonly strokes: number }) | null {
  const latest = swings.slice(-OF_LATEST).filter((swing) => swing !== null);
  const newest = latest.at(-1);
  if (newest === undefined) return null;
  const alike = latest.filter(({ cycles }) => Math.abs(cycles / newest.cycles - 1) <= ALIKE);
  return alike.length >= LEAST_STROKES ? { ...newest, strokes: alike.length } : null;
}
