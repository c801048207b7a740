import type { MeasureName } from '../measures.ts';

/**
 * What is expected of any room before its own strokes are known. Slopes are per volt of supply and per degree of
 * ambient temperature, on the measure's scale (natural logarithm for a ratio, its own unit for a difference).
 *
 * Inrush and stall current are V/R: one volt in 12.6 is 7.9 %, and copper takes 0.39 % a degree (IEC 60028); the
 * speed of a lightly loaded permanent-magnet motor follows the supply, so duration falls by about as much. That a
 * room draws about half a per cent more for each degree colder is common practice, no source. The spreads are wide
 * on purpose: they are what a room's own strokes may overrule.
 */
export interface MeasurePrior {
  readonly perVolt: { readonly mean: number; readonly spread: number };
  readonly perDegree: { readonly mean: number; readonly spread: number };
  /** Stroke-to-stroke standard deviation, and how many strokes that guess is worth. */
  readonly scale: number;
  readonly scaleWeight: number;
  readonly scaleFloor: number;
  /** Spread of the level about the first strokes' own median: wide enough to be no constraint. */
  readonly levelSpread: number;
}

/** The force that a room takes. */
const AMPS: MeasurePrior = {
  perVolt: { mean: 0.01, spread: 0.03 },
  perDegree: { mean: -0.005, spread: 0.004 },
  scale: 0.03,
  scaleWeight: 6,
  scaleFloor: 0.012,
  levelSpread: 0.5,
};

/** The current at standstill is V/R; read off the peak of a start it scatters. */
const STALL: MeasurePrior = {
  ...AMPS,
  perVolt: { mean: 0.079, spread: 0.03 },
  perDegree: { mean: -0.0039, spread: 0.003 },
  scale: 0.1,
  scaleFloor: 0.04,
};

/**
 * How much the current varies along the travel, amperes: a supply changes it by no rule, cold by the same part as the
 * current itself.
 */
const SHAPE_AMPS: MeasurePrior = {
  perVolt: { mean: 0, spread: 0.05 },
  perDegree: { mean: -0.005, spread: 0.01 },
  scale: 0.2,
  scaleWeight: 6,
  scaleFloor: 0.06,
  levelSpread: 2,
};

/**
 * The course of the current along the travel, as parts of its mean: neither supply nor weather changes it by any rule.
 */
const SHAPE_PART: MeasurePrior = {
  perVolt: { mean: 0, spread: 0.01 },
  perDegree: { mean: 0, spread: 0.002 },
  scale: 0.035,
  scaleWeight: 6,
  scaleFloor: 0.012,
  levelSpread: 1,
};

/** What is expected of each measure; see `MeasurePrior` for the sources. */
export const PRIORS: Readonly<Record<MeasureName, MeasurePrior>> = {
  runningAmps: AMPS,
  runningAmpsP90: AMPS,
  inrushAmps: STALL,
  // A stall lasts for many samples, where a start's peak falls between two.
  endStopAmps: { ...STALL, scale: 0.06, scaleFloor: 0.02 },
  durationS: {
    ...AMPS,
    perVolt: { mean: -0.085, spread: 0.03 },
    perDegree: { mean: -0.001, spread: 0.003 },
  },
  chargeAs: { ...AMPS, perVolt: { mean: -0.075, spread: 0.04 }, scale: 0.04 },
  energyJ: { ...AMPS, perVolt: { mean: 0, spread: 0.04 }, scale: 0.04 },
  share: {
    perVolt: { mean: 0, spread: 0.005 },
    perDegree: { mean: 0, spread: 0.0007 },
    scale: 0.012,
    scaleWeight: 6,
    scaleFloor: 0.004,
    levelSpread: 0.5,
  },
  lagS: {
    perVolt: { mean: 0, spread: 0.1 },
    perDegree: { mean: 0, spread: 0.01 },
    scale: 0.15,
    scaleWeight: 6,
    scaleFloor: 0.05,
    levelSpread: 5,
  },
  roughness: { ...SHAPE_AMPS, scale: 0.15, scaleFloor: 0.05 },
  spreadAmps: SHAPE_AMPS,
  slope: SHAPE_PART,
  bulge: SHAPE_PART,
  rippleAmps: { ...SHAPE_AMPS, scale: 0.3, scaleFloor: 0.1 },
  // Copper conducts better in the cold (IEC 60028), and a ferrite magnet is stronger there by some 0.2 % a degree.
  turnsAs: {
    ...AMPS,
    perVolt: { mean: 0, spread: 0.02 },
    perDegree: { mean: -0.005, spread: 0.003 },
  },
};

/** How far the supply differs from one stay to the next, volts: usually, and at the least. Guesses, no source. */
const SUPPLY_VOLTS = 0.5;
const LEAST_SUPPLY_VOLTS = 0.25;

/** The prior where the supply is not recorded: what it does to a measure becomes part of that measure's spread. */
export function unseenSupply(prior: MeasurePrior): MeasurePrior {
  const perVolt = Math.abs(prior.perVolt.mean);
  return {
    ...prior,
    scale: Math.hypot(prior.scale, perVolt * SUPPLY_VOLTS),
    scaleFloor: Math.hypot(prior.scaleFloor, perVolt * LEAST_SUPPLY_VOLTS),
  };
}

/**
 * The prior where the temperature is not recorded and the season stands for it: a slope as steep as a temperature's, of
 * either sign, because nobody tells on which half of the earth a coach winters.
 */
export function unseenTemperature(prior: MeasurePrior): MeasurePrior {
  const { mean, spread } = prior.perDegree;
  return { ...prior, perDegree: { mean: 0, spread: Math.hypot(mean, spread) } };
}

/** What an unrecorded supply or temperature may have been off the reference, volts and degrees: guesses, no source. */
export const UNRECORDED: readonly [number, number] = [0.4, 8];
/** How far the weather of some weeks may be off the season, degrees: a guess, no source. */
export const UNSEASONABLE_C = 4;
/** Within this many days it may get there: a guess, no source. */
export const WEATHER_DAYS = 10;

/**
 * How far the levels of rooms of one coach model differ (standard deviation, on the measure's scale) before any two of
 * them are known: furniture, wear and clamps differ by some per cent; a guess on the wide side, no source, that the
 * rooms themselves overrule.
 */
export const ROOM_SPREADS: Readonly<Record<MeasureName, number>> = {
  runningAmps: 0.08,
  runningAmpsP90: 0.08,
  inrushAmps: 0.1,
  endStopAmps: 0.1,
  durationS: 0.08,
  chargeAs: 0.1,
  energyJ: 0.1,
  share: 0.025,
  lagS: 0.4,
  roughness: 0.3,
  spreadAmps: 0.3,
  slope: 0.1,
  bulge: 0.06,
  rippleAmps: 0.4,
  turnsAs: 0.12,
};
