import { PROFILE_BINS } from '../measures.ts';

type Profile = readonly (number | null)[];

/** A stretch of travel, 0 to 1, whose current changed, and by how much on average (after less before, amperes). */
export interface ChangedRange {
  readonly from: number;
  readonly to: number;
  readonly shiftAmps: number;
}

const ERROR_RATE = 0.05;
const MOST_PERMUTATIONS = 2000;
const SEED = 20_011;

/**
 * The stretches of travel where the profile changed, by a permutation test of the largest standardised difference
 * over all bins, so that the error rate holds for the whole profile at once. With three strokes or fewer a side no
 * arrangement is rare enough and nothing is told.
 *
 * Source: P. H. Westfall, S. S. Young (1993), Resampling-Based Multiple Testing, section 2.3 (single-step maxT).
 */
export function changedRanges(before: readonly Profile[], after: readonly Profile[]): ChangedRange[] {
  const all = [...before, ...after];
  const bins = binsInAll(all);
  if (before.length < 2 || after.length < 2 || bins.length === 0) return [];
  const observed = differences(all, bins, (i) => i >= before.length);
  const floor = Math.max(...observed.spread) * 0.1 + 1e-9;
  const largest = (group: (i: number) => boolean) => {
    const { shift, spread } = differences(all, bins, group);
    return Math.max(...shift.map((value, b) => Math.abs(value) / (spread[b] + floor)));
  };
  const maxima = arrangements(all.length, after.length).map((chosen) => largest((i) => chosen.has(i)));
  maxima.sort((a, b) => b - a);
  const allowed = Math.floor(ERROR_RATE * maxima.length);
  if (allowed < 1) return [];
  const limit = maxima[allowed - 1];
  const changed = bins.map((bin, b) => ({
    bin,
    shift: observed.shift[b],
    told: Math.abs(observed.shift[b]) / (observed.spread[b] + floor) >= limit,
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

function binsInAll(profiles: readonly Profile[]): number[] {
  return Array.from({ length: PROFILE_BINS }, (_, bin) => bin).filter((bin) =>
    profiles.every((profile) => profile[bin] !== null),
  );
}

function differences(profiles: readonly Profile[], bins: readonly number[], isAfter: (i: number) => boolean) {
  const shift: number[] = [];
  const spread: number[] = [];
  for (const bin of bins) {
    const groups: [number[], number[]] = [[], []];
    profiles.forEach((profile, i) => {
      groups[isAfter(i) ? 1 : 0].push(profile[bin] ?? 0);
    });
    const [x, y] = groups.map((group) => group.reduce((sum, value) => sum + value, 0) / group.length);
    const squares =
      groups[0].reduce((s, v) => s + (v - x) ** 2, 0) + groups[1].reduce((s, v) => s + (v - y) ** 2, 0);
    const freedom = Math.max(1, profiles.length - 2);
    shift.push(y - x);
    spread.push(Math.sqrt((squares / freedom) * (1 / groups[0].length + 1 / groups[1].length)));
  }
  return { shift, spread };
}

/** Every choice of `k` out of `n` where there are few, else a seeded sample of them. */
function arrangements(n: number, k: number): Set<number>[] {
  const count = choices(n, k);
  if (count <= MOST_PERMUTATIONS) return everyChoice(n, k);
  const random = multiplicative(SEED);
  return Array.from({ length: MOST_PERMUTATIONS }, () => {
    const order = Array.from({ length: n }, (_, i) => i);
    for (let i = 0; i < k; i++) {
      const j = i + Math.floor(random() * (n - i));
      [order[i], order[j]] = [order[j], order[i]];
    }
    return new Set(order.slice(0, k));
  });
}

function choices(n: number, k: number): number {
  let count = 1;
  for (let i = 1; i <= k; i++) count = (count * (n - k + i)) / i;
  return Math.round(count);
}

function everyChoice(n: number, k: number, from = 0): Set<number>[] {
  if (k === 0) return [new Set()];
  const found: Set<number>[] = [];
  for (let first = from; first <= n - k; first++) {
    for (const rest of everyChoice(n, k - 1, first + 1)) found.push(rest.add(first));
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
