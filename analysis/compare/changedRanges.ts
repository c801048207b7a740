import { PROFILE_BINS } from '../measures.ts';
import { arrangements } from './arrangements.ts';

type Profile = readonly (number | null)[];

/** A stretch of travel, 0 to 1, whose current changed, and by how much on average (after less before, amperes). */
export interface ChangedRange {
  readonly from: number;
  readonly to: number;
  readonly shiftAmps: number;
}

/** The chance that a profile which did not change is said to have changed anywhere. */
const ERROR_RATE = 0.05;
/** A spread far below the widest of all bins is chance: a part of that stands for it, so that no quiet bin tells alone. */
const SPREAD_FLOOR = 0.1;

/**
 * The stretches of travel where the profile changed by more than `leftOpen` of its current, by a permutation test of the largest
 * standardised difference over all bins, so that the error rate holds for the whole profile at once. With three strokes or
 * fewer on each side of the work no arrangement is rare enough and nothing is told. Bins that not every stroke has are left out.
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
  const floor = Math.max(...observed.spread) * SPREAD_FLOOR + 1e-9;
  const maxima = arrangements(all.length, after.length).map((chosen) => {
    const { shift, spread } = differences(flat, totals, chosen, all.length);
    let largest = 0;
    for (let b = 0; b < bins.length; b++)
      largest = Math.max(largest, Math.abs(shift[b]) / (spread[b] + floor));
    return largest;
  });
  const limit = limitOf(maxima);
  const level = totals.sums.map((sum) => Math.abs(sum) / all.length);
  const changed = bins.map((bin, b) => ({
    bin,
    shift: observed.shift[b],
    told: (Math.abs(observed.shift[b]) - leftOpen * level[b]) / (observed.spread[b] + floor) > limit,
  }));
  return joined(changed.filter(({ told }) => told));
}

/** Two arrangements that mirror each other (before for after) come to the same, but for the last digits. */
const SAME = 1e-9;

/**
 * What a change must be larger than, so that no more than the error rate's part of all arrangements come to as much. Where
 * both spans hold as many strokes each arrangement has its mirror, which comes to the same: three strokes against three have
 * one pair of 20 at the top, which is not rare enough, whatever changed.
 */
function limitOf(maxima: readonly number[]): number {
  const falling = [...maxima].sort((a, b) => b - a);
  return falling[Math.floor(ERROR_RATE * falling.length)] * (1 + SAME);
}

/** Bins in which every profile has a sample. */
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

/** Neighbouring bins that changed the same way, as one range. */
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
