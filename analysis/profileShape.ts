import { goertzel } from './statistics/goertzel.ts';
import { quantile } from './statistics/quantile.ts';

/** How a side's current goes along the travel, told from its profile; null where too little of it was measured. */
export interface ProfileShape {
  /** From the 10th to the 90th percentile of the travel's bins, amperes. */
  readonly spreadAmps: number;
  /** The outer third over the inner one, as a part of the mean current. */
  readonly slope: number;
  /** The middle third over the outer two, as a part of the mean current. */
  readonly bulge: number;
  /** Amplitude of the strongest swing of 4 to 24 periods over the travel, amperes. */
  readonly rippleAmps: number;
}

/** Fewer periods over the travel are its slow course; more are too fine for 64 bins. */
const FEWEST_CYCLES = 4;
const MOST_CYCLES = 24;
/** Bins that must have been measured: of each third, and of all whatever their number. */
const FEWEST_IN_THIRD = 2;
const FEWEST_BINS = 6;

/**
 * Spread, slope, bulge and ripple of a profile (amps by equal bins of travel, retracted to extended, null where nothing
 * was measured). Null with fewer than half of the bins, or hardly any of one third. The ripple is read from the Fourier
 * terms (`goertzel`) of what is left when a moving mean, the slow course, is taken off; bins without a sample are closed up for
 * it, which shifts a swing's periods by as much.
 */
export function profileShape(profile: readonly (number | null)[]): ProfileShape | null {
  let shape = SHAPES.get(profile);
  if (shape === undefined) {
    shape = shapeOf(profile);
    SHAPES.set(profile, shape);
  }
  return shape;
}

/** Several measures are read off one profile: it is worked out once while it is in use. */
const SHAPES = new WeakMap<readonly (number | null)[], ProfileShape | null>();

function shapeOf(profile: readonly (number | null)[]): ProfileShape | null {
  const measured = profile.filter((amps) => amps !== null);
  if (measured.length < Math.max(FEWEST_BINS, profile.length / 2)) return null;
  const third = profile.length / 3;
  const mean = meanOf(measured);
  const thirds = [0, 1, 2].map((part) =>
    profile.slice(Math.round(part * third), Math.round((part + 1) * third)).filter((amps) => amps !== null),
  );
  if (thirds.some(({ length }) => length < FEWEST_IN_THIRD)) return null;
  const [inner, middle, outer] = thirds.map((part) => meanOf(part));
  return {
    spreadAmps: quantile(measured, 0.9) - quantile(measured, 0.1),
    slope: (outer - inner) / mean,
    bulge: (middle - (outer + inner) / 2) / mean,
    rippleAmps: rippleOf(measured),
  };
}

/** Of the values from one place up to but without another. */
function meanOf(values: readonly number[], from = 0, end = values.length): number {
  let sum = 0;
  for (let i = from; i < end; i++) sum += values[i];
  return sum / (end - from);
}

/** Half the window, in bins, of the moving mean that is taken for the slow course. */
const COURSE_BINS = 8;

function rippleOf(measured: readonly number[]): number {
  const about = measured.map((amps, i) => {
    const end = Math.min(measured.length, i + COURSE_BINS + 1);
    return amps - meanOf(measured, Math.max(0, i - COURSE_BINS), end);
  });
  let strongest = 0;
  for (let cycles = FEWEST_CYCLES; cycles <= MOST_CYCLES; cycles++) {
    strongest = Math.max(strongest, goertzel(about, cycles / about.length).amplitude);
  }
  return strongest;
}
