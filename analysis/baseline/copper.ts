import type { DoneAnalysis } from '../measures.ts';
import { COPPER_PER_C } from '../motor/copper.ts';
import { median } from '../statistics/median.ts';
import { endsAtStandstill } from './endsAtStandstill.ts';

/** A motor that ran so shortly before is warmer than the weather: its copper tells of itself. A guess, no source. */
const COOLED_MS = 20 * 60_000;

/**
 * What the copper of one side's motor and leads says of the temperature, in degrees: the current at standstill is V/R,
 * and copper takes 0.393 % a degree (IEC 60028). Null where no stall at the end stop was read, where the supply
 * was not read during it, and where the motor had not cooled down. `restedMs`: how long it had rested; null: not known. The
 * supply while the room ran is no V of the stall: a battery that grew old, or another source, gives less of it there by what
 * its own resistance takes, which would read as tens of degrees.
 *
 * The origin differs from motor to motor: only differences mean anything.
 */
export function copperReading(
  { sides }: Pick<DoneAnalysis, 'sides'>,
  side: string,
  restedMs: number | null,
): number | null {
  const measured = sides[side];
  const stallAmps = measured !== undefined && endsAtStandstill(measured) ? measured.endStopAmps : null;
  const stallVolts = measured?.endStopVolts;
  if (
    stallAmps === null ||
    stallVolts === undefined ||
    (restedMs !== null && restedMs >= 0 && restedMs < COOLED_MS)
  )
    return null;
  const reading = Math.log(stallVolts / stallAmps) / COPPER_PER_C;
  return Number.isFinite(reading) ? Math.round(100 * reading) / 100 : null;
}

/** What the copper says of a stroke's temperature. */
export interface CopperRead {
  readonly degrees: number;
  /** How old the reading is: weather lasts for some days. */
  readonly days: number;
  /** Whether the other side's copper says so too: a clamp whose scale changed is alone with it. */
  readonly isShared: boolean;
}

/** What a reference's readings are held against. */
export interface CopperScale {
  readonly usual: number;
  /** What is warmer is counted as this. */
  readonly warmest: number;
}

/** So many of the reference's strokes must have been read. */
const LEAST_READ = 0.5;
const FEWEST_READ = 4;
/**
 * Weather differs by some degrees from one stroke to the next; where readings differ by more than this (standard
 * deviation of one) the stall is read too badly to tell it. A guess, no source.
 */
const MOST_UNSTEADY_C = 8;
/**
 * A bad contact reads as warm copper too, and would make a rise of what is none: no more warmth than this is believed. A
 * guess, no source.
 */
const MOST_WARMER_C = 4;
/** No weather that anybody camps in is so much colder than a reference's own: a sensor that changed is. A guess, no source. */
const MOST_COLDER_C = 40;

/** The median absolute difference of two normal values, as a part of the standard deviation of one: sqrt(2) x 0.6745. */
const MEDIAN_DIFFERENCE = 0.954;

/** The scale of a reference, `reads` in order of time; null where too few were read, or too badly. */
export function copperScale(reads: readonly (CopperRead | null)[]): CopperScale | null {
  const known = reads.flatMap((read) => (read === null || read.days > 0 ? [] : [read.degrees]));
  if (known.length < Math.max(FEWEST_READ, LEAST_READ * reads.length)) return null;
  const steps = known.slice(1).map((degrees, i) => Math.abs(degrees - known[i]));
  if (median(steps) / MEDIAN_DIFFERENCE > MOST_UNSTEADY_C) return null;
  const usual = median(known);
  return { usual, warmest: Math.min(usual + MOST_WARMER_C, Math.max(...known)) };
}

/** Degrees about the reference's usual, as far as the copper is believed; null: not known. */
export function copperDegrees({ usual, warmest }: CopperScale, read: CopperRead | null): number | null {
  return read === null ? null : Math.max(-MOST_COLDER_C, Math.min(read.degrees, warmest) - usual);
}

/** Weather of so many days ago tells nothing any more. */
export const MOST_DAYS = 30;
