import { PROFILE_BINS } from '../measures.ts';
import type { ChangedRange } from './compared.ts';
import { meanProfile } from './profileBand.ts';
import type { Profile } from './relativeProfile.ts';
import type { ShapeChange } from './shapeChange.ts';
import type { ShiftInterval } from './shiftInterval.ts';

/** What is known of one side and direction, before against after. */
export interface TravelChange {
  readonly before: readonly Profile[];
  readonly after: readonly Profile[];
  readonly shape: readonly ShapeChange[];
  /** Of the running current, natural logarithm; null where it cannot be told. */
  readonly level: ShiftInterval | null;
}

/**
 * The stretches of travel where the current changed: those whose part of the level moved by more than chance and the level's
 * own change account for, and, where the level surely changed, all that followed it. Half of the error rate is for either.
 */
export function changedRanges({ before, after, shape, level }: TravelChange): ChangedRange[] {
  const [earlier, later] = [meanProfile(before), meanProfile(after)];
  const changed = shape.flatMap(({ bin, part, shift, reach }) => {
    const shiftAmps = (later[bin] ?? 0) - (earlier[bin] ?? 0);
    // A load that comes on top of all of the travel alike makes it flatter: that is no change of a place.
    const flatter = Math.abs(part - 1) * Math.abs(level?.shift ?? 0);
    const isLocal = Math.abs(shift) > reach + flatter && Math.sign(shift) === Math.sign(shiftAmps);
    return isLocal || followed(level, { part, reach, shiftAmps, before: earlier[bin] ?? 0 })
      ? [{ bin, shift: shiftAmps }]
      : [];
  });
  return joined(changed);
}

interface Place {
  readonly part: number;
  readonly reach: number;
  readonly before: number;
  readonly shiftAmps: number;
}

/** Whether a place went the way of a level that surely changed, by more than what is open of both. */
function followed(level: ShiftInterval | null, { part, reach, before, shiftAmps }: Place): boolean {
  if (level === null || (level.lower <= 0 && level.upper >= 0) || !(before > 0)) return false;
  if (Math.sign(shiftAmps) !== Math.sign(level.shift)) return false;
  const open = Math.abs(level.shift) - Math.min(Math.abs(level.lower), Math.abs(level.upper));
  return Math.abs(shiftAmps / before) > Math.hypot(open, reach / Math.max(part, 1e-9));
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
