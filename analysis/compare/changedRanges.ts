import { PROFILE_BINS } from '../measures.ts';

type Profile = readonly (number | null)[];

/** A stretch of travel, 0 to 1, whose current changed, and by how much on average (after less before, amperes). */
export interface ChangedRange {
  readonly from: number;
  readonly to: number;
  readonly shiftAmps: number;
}

const ERROR_RATE = 0.05;
const MOST_PERMUTATIONS = 1000;
/** With hundreds of strokes each arrangement is work: fewer of them, and an error rate of 5 % give or take 1.5. */
const MANY_STROKES = 400;
const PERMUTATIONS_OF_MANY = 200;
const SEED = 20_011;

/**
 * The stretches of travel where the profile changed by more than `leftOpen` of its current, by a permutation test of the largest standardised difference
 * over all bins, so that the error rate holds for the whole profile at once. With three strokes or fewer a side no
 * arrangement is rare enough and nothing is told.
 *
 * Source: P. H. Westfall, S. S. Young (1993), Resampling-Based Multiple Testing, section 2.3 (single-step maxT).
 */
export function changedRanges(
  before: readonly Profile[],
  after: readonly Profile[],
  leftOpen = 0,
): ChangedRange[] {
  const all = [...before, ...after];
  const bins = binsInAll(all);
  if (before.length < 2 || after.length < 2 || bins.length === 0) return [];
  const flat = flatten(all, bins);
  const late = all.map((_, i) => i).slice(before.length);
  const totals = totalsOf(flat, bins.length);
  const observed = differences(flat, totals, late, all.length);
  const floor = Math.max(...observed.spread) * 0.1 + 1e-9;
  const maxima = arrangements(all.length, after.length).map((chosen) => {
    const { shift, spread } = differences(flat, totals, chosen, all.length);
    let largest = 0;
    for (let b = 0; b < bins.length; b++)
      largest = Math.max(largest, Math.abs(shift[b]) / (spread[b] + floor));
    return largest;
  });
  maxima.sort((a, b) => b - a);
  const allowed = Math.floor(ERROR_RATE * maxima.length);
  if (allowed < 1) return [];
  const limit = maxima[allowed - 1];
  const level = totals.sums.map((sum) => Math.abs(sum) / all.length);
  const changed = bins.map((bin, b) => ({
    bin,
    shift: observed.shift[b],
    told: (Math.abs(observed.shift[b]) - leftOpen * level[b]) / (observed.spread[b] + floor) >= limit,
  }));
  return joined(changed.filter(({ told }) => told));
}

/** Mean of the profiles in each bin; null where none has a sample. */
export function meanProfile(profiles: readonly Profile[]): (number | null)[] {
  return Array.from({ length: PROFILE_BINS }, (_, bin) => {
    const values = profiles.map((profile) => profile[bin]).filter((value): value is number => value !== null);
    return values.length > 0 ? values.reduce((sum, value) => sum + value, 0) / values.length : null;
  });
}

/** The lowest and the highest of the profiles in each bin; null where none has a sample. */
export interface ProfileBand {
  readonly lower: (number | null)[];
  readonly upper: (number | null)[];
}

export function profileBand(profiles: readonly Profile[]): ProfileBand {
  const extreme = (of: (...values: number[]) => number) =>
    Array.from({ length: PROFILE_BINS }, (_, bin) =>
      profiles.reduce<number | null>((held, profile) => {
        const amps = profile[bin] ?? null;
        return amps === null ? held : held === null ? amps : of(held, amps);
      }, null),
    );
  return { lower: extreme(Math.min), upper: extreme(Math.max) };
}

function binsInAll(profiles: readonly Profile[]): number[] {
  return Array.from({ length: PROFILE_BINS }, (_, bin) => bin).filter((bin) =>
    profiles.every((profile) => profile[bin] !== null),
  );
}

/** Amps by profile and bin, row after row. */
function flatten(profiles: readonly Profile[], bins: readonly number[]): Float64Array {
  const flat = new Float64Array(profiles.length * bins.length);
  profiles.forEach((profile, row) => {
    bins.forEach((bin, b) => {
      flat[row * bins.length + b] = profile[bin] ?? 0;
    });
  });
  return flat;
}

/** Of all rows, bin by bin: the same whichever of them are chosen. */
interface Totals {
  readonly sums: Float64Array;
  readonly squares: Float64Array;
}

function totalsOf(flat: Float64Array, bins: number): Totals {
  const sums = new Float64Array(bins);
  const squares = new Float64Array(bins);
  for (let at = 0; at < flat.length; at++) {
    sums[at % bins] += flat[at];
    squares[at % bins] += flat[at] * flat[at];
  }
  return { sums, squares };
}

/** Mean of the chosen rows less that of the others, and its standard error by the pooled spread, bin by bin. */
function differences(flat: Float64Array, { sums, squares }: Totals, chosen: readonly number[], rows: number) {
  const bins = sums.length;
  const shift = new Float64Array(bins);
  const spread = new Float64Array(bins);
  const others = rows - chosen.length;
  const sum = new Float64Array(bins);
  for (const row of chosen) for (let b = 0; b < bins; b++) sum[b] += flat[row * bins + b];
  for (let b = 0; b < bins; b++) {
    const mean = sum[b] / chosen.length;
    const otherMean = (sums[b] - sum[b]) / others;
    const within = Math.max(0, squares[b] - chosen.length * mean ** 2 - others * otherMean ** 2);
    shift[b] = mean - otherMean;
    spread[b] = Math.sqrt((within / Math.max(1, rows - 2)) * (1 / chosen.length + 1 / others));
  }
  return { shift, spread };
}

/** Every choice of `k` out of `n` where there are few, else a seeded sample of them. */
function arrangements(n: number, k: number): number[][] {
  const count = choices(n, k);
  if (count <= MOST_PERMUTATIONS) return everyChoice(n, k);
  const random = multiplicative(SEED);
  const order = Array.from({ length: n }, (_, i) => i);
  return Array.from({ length: n > MANY_STROKES ? PERMUTATIONS_OF_MANY : MOST_PERMUTATIONS }, () => {
    for (let i = 0; i < k; i++) {
      const j = i + Math.floor(random() * (n - i));
      [order[i], order[j]] = [order[j], order[i]];
    }
    return order.slice(0, k);
  });
}

function choices(n: number, k: number): number {
  let count = 1;
  for (let i = 1; i <= k; i++) count = (count * (n - k + i)) / i;
  return Math.round(count);
}

function everyChoice(n: number, k: number, from = 0): number[][] {
  if (k === 0) return [[]];
  const found: number[][] = [];
  for (let first = from; first <= n - k; first++) {
    for (const rest of everyChoice(n, k - 1, first + 1)) found.push([first, ...rest]);
  }
  return found;
}

/** Lehmer's generator with the multiplier of S. K. Park and K. W. Miller (1988). */
function multiplicative(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function joined(changed: readonly { bin: number; shift: number }[]): ChangedRange[] {
  const ranges: { from: number; to: number; shifts: number[] }[] = [];
  for (const { bin, shift } of changed) {
    const last = ranges[ranges.length - 1];
    if (last !== undefined && bin - last.to <= 1 && Math.sign(shift) === Math.sign(last.shifts[0])) {
      last.to = bin;
      last.shifts.push(shift);
    } else ranges.push({ from: bin, to: bin, shifts: [shift] });
  }
  return ranges.map(({ from, to, shifts }) => ({
    from: from / PROFILE_BINS,
    to: (to + 1) / PROFILE_BINS,
    shiftAmps: shifts.reduce((sum, value) => sum + value, 0) / shifts.length,
  }));
}
