import { MEASURE_NAMES } from '../measures.ts';
import type { Direction } from '../trace.ts';
import {
  BY_SEASON,
  type Conditions,
  PER_DEGREE_VARIANCE,
  PER_VOLT_VARIANCE,
  type Weather,
} from './conditions.ts';
import type { Lent } from './lent.ts';
import { beginOwnLimit, type OwnLimit, withNewNormal } from './ownLimit.ts';
import { LEARNING_STROKES } from './strokesNeeded.ts';

/** What was fitted to the reference strokes of one measure; plain numbers, so that the state is JSON. */
export interface Fit {
  readonly coefficients: readonly number[];
  readonly covariance: readonly number[];
  readonly scale: number;
  readonly degreesOfFreedom: number;
}

/** The old baseline's shape, from which a new one starts after a service. */
export interface Shape {
  readonly slopes: readonly [number, number];
  readonly spreads: readonly [number, number];
  readonly scale: number;
  readonly weight: number;
}

/**
 * The baseline of one side in one direction: reference strokes and, by index of MEASURES, what was fitted to them.
 * `level` is how far the measure has drifted benignly since, `recent` a moving mean of the latest residuals.
 */
export interface Channel {
  readonly side: string;
  readonly direction: Direction;
  /** The conditions of each reference stroke, and where its temperature is taken from. */
  conditions: Conditions[];
  weather: Weather;
  /** By reference stroke, by measure, on the measure's scale. */
  values: (number | null)[][];
  fits: (Fit | null)[];
  shapes: (Shape | null)[];
  level: number[];
  recent: number[];
  /** What its strokes have told of its single-stroke limits. */
  ownLimits: OwnLimit[];
  /** When the latest reference stroke was made, milliseconds since 1970. */
  learntAtMs: number;
  /**
   * The usual profile: a moving mean of the median amps by travel position; null where nothing was measured. After work
   * on the mechanism the old one stands until the first stroke is learnt.
   */
  profile: (number | null)[];
  /**
   * How far each stroke since the latest light service lay from the reference, by measure; null: no such strokes are
   * awaited.
   */
  settling: (number | null)[][] | null;
  /** Reference strokes needed before it is used. */
  needed: number;
  /** Samples a second of the reference strokes; null: not known. */
  rateHz: number | null;
  /**
   * Whether its stalls are learnt anew since the sampling rate changed, being too short for the slower of the two
   * rates.
   */
  readsStallsAnew: boolean;
  /** Whether what goes by the other sides (`goesByOtherSides`) is learnt anew since work on another side alone. */
  comparesAnew: boolean;
  /** What the motor's copper last read, and when; null: never. */
  copper: { readonly degrees: number; readonly isShared: boolean; readonly atMs: number } | null;
  /** What rooms of the same coach model lend it; null: nothing. */
  readonly lent: Lent | null;
}

/** A channel that has learnt nothing; `lent`: what rooms of the same coach model lend it. */
export function beginChannel(side: string, direction: Direction, lent: Lent | null = null): Channel {
  return {
    side,
    direction,
    conditions: [],
    weather: BY_SEASON,
    values: [],
    fits: MEASURE_NAMES.map(() => null),
    shapes: MEASURE_NAMES.map(() => null),
    level: MEASURE_NAMES.map(() => 0),
    recent: MEASURE_NAMES.map(() => 0),
    ownLimits: MEASURE_NAMES.map(beginOwnLimit),
    learntAtMs: 0,
    profile: [],
    settling: null,
    needed: lent?.needed ?? LEARNING_STROKES,
    rateHz: null,
    readsStallsAnew: false,
    comparesAnew: false,
    copper: null,
    lent,
  };
}

/**
 * Whether it has as many strokes as a normal needs. There may still be no fit, as where all of them were parts of
 * strokes.
 */
export function hasEnough(channel: Channel): boolean {
  return channel.values.length >= channel.needed;
}

/** Whether strokes can be compared with it. */
export function isReady(channel: Channel): boolean {
  return hasEnough(channel) && channel.fits.some((fit) => fit !== null);
}

/**
 * Whether it goes by what rooms of its model lend it: until it has as many strokes as it would need alone, or a shape
 * from before.
 */
export function isBorrowing(channel: Channel): boolean {
  const own = channel.values.length >= LEARNING_STROKES || channel.shapes.some((shape) => shape !== null);
  return channel.lent !== null && !own;
}

/** Whether strokes can be compared with a normal from its own strokes, and not with what others lend it. */
export function hasOwnNormal(channel: Channel): boolean {
  return isReady(channel) && !isBorrowing(channel);
}

/** Whether the usual profile is still the one from before the latest work on the mechanism. */
export function hasFormerProfile({ values, profile }: Channel): boolean {
  return values.length === 0 && profile.length > 0;
}

/** Forgets one measure's normal and its values in the reference strokes; a shape from before stays. */
export function forgetMeasure(channel: Channel, index: number): void {
  channel.fits[index] = null;
  channel.level[index] = 0;
  channel.recent[index] = 0;
  channel.ownLimits[index] = withNewNormal(channel.ownLimits[index]);
  for (const values of channel.values) values[index] = null;
}

/** An old spread counts for no more strokes than this beside the new ones: a guess, no source. */
const MOST_WEIGHT = 12;

/** The shape of an old fit, from which a new one may start. */
export function shapeOf(old: Fit): Shape {
  return {
    slopes: [old.coefficients[1], old.coefficients[2]],
    spreads: [Math.sqrt(old.covariance[PER_VOLT_VARIANCE]), Math.sqrt(old.covariance[PER_DEGREE_VARIANCE])],
    scale: old.scale,
    weight: Math.min(MOST_WEIGHT, old.degreesOfFreedom),
  };
}
