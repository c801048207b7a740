import type { DoneAnalysis } from '../measures.ts';
import { COPPER_PER_C } from '../motor/copper.ts';
import { median } from '../statistics/median.ts';
import { endsAtStandstill } from './endsAtStandstill.ts';

/**
 * A motor that ran within this time before is warmer than the weather, and its copper tells only that. A guess, no
 * source.
 */
const COOLED_MS = 20 * 60_000;

/**
 * The temperature in degrees according to the copper of one side's motor and leads: the current at standstill is V/R,
 * and copper's resistance rises by 0.393 % a degree (IEC 60028). The origin differs from motor to motor, so that only
 * differences mean anything.
 *
 * Null where no stall at the end stop was read, where the supply was not read during it, and where the motor had not
 * cooled down. `restedMs`: how long it had rested; null: not known. The supply while the room ran will not do for V: a
 * battery that grew old, or another source, loses more volts at the stall to its own resistance, which would read as
 * tens of degrees.
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

/** A temperature read off the copper, as a stroke keeps it. */
export interface CopperRead {
  readonly degrees: number;
  /** How old the reading is, days: weather lasts for some days. */
  readonly days: number;
  /** Whether the other side's copper agrees: if one clamp changed its scale, it does not. */
  readonly isShared: boolean;
}

/** The origin and the limit of a reference's copper readings, degrees. */
export interface CopperScale {
  readonly usual: number;
  /** A warmer reading counts as this. */
  readonly warmest: number;
}

/** At least this part of the reference's strokes, and this many, must have a reading. */
const LEAST_READ = 0.5;
const FEWEST_READ = 4;
/**
 * Weather differs by some degrees from one stroke to the next; where readings differ by more than this (standard
 * deviation of one) the stall is read too badly to tell it. A guess, no source.
 */
const MOST_UNSTEADY_C = 8;
/**
 * No more warmth than this is believed: a bad contact reads as warm copper too, and would make a usual current look
 * like a rise. A guess, no source.
 */
const MOST_WARMER_C = 4;
/**
 * No more cold than this is believed: nobody camps in weather that much colder than a reference's, but a changed sensor
 * reads so. A guess, no source.
 */
const MOST_COLDER_C = 40;

/**
 * The median absolute difference of two normal values, as a part of the standard deviation of one: sqrt(2) x 0.6745.
 */
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

/** Degrees from the reference's usual, limited to what is believed of the copper; null: not known. */
export function copperDegrees({ usual, warmest }: CopperScale, read: CopperRead | null): number | null {
  return read === null ? null : Math.max(-MOST_COLDER_C, Math.min(read.degrees, warmest) - usual);
}

/** A reading older than this many days tells nothing of the weather. */
export const MOST_DAYS = 30;
