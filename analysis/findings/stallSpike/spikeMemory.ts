import { incompleteBeta } from '../../statistics/incompleteBeta.ts';
import type { Direction } from '../../trace.ts';
import { type HowOftenOfSides, isOverSince, keepHowOften } from '../howOften.ts';
import type { CourseMemory } from './courseMemory.ts';
import type { Swing } from './swing.ts';

/** The spikes of one of the latest strokes on one side; heights as parts of the running current. */
export interface SpikedStroke {
  readonly direction: Direction;
  /** On the travel, 0 fully retracted to 1 fully extended. */
  readonly positions: readonly number[];
  /** How far off they may be, parts of the travel: on a part of the way they depend on where that began. */
  readonly unsure: number;
  readonly heights: readonly number[];
  /** A regular swing along the travel that the side has not usually had; null: none. */
  readonly swing: Swing | null;
  /** Whether the place that a warning names still draws more than it used to. */
  readonly stillRises: boolean;
}

/** Where the room stood after a stroke, and how far off that may be, parts of the travel. */
export interface Standing {
  readonly place: number;
  readonly unsure: number;
  readonly atMs: number;
}

/** What is remembered of the peaks of all sides. */
export interface SpikeMemory {
  /** The latest strokes of each side, oldest first, those without a spike included. */
  sides: Record<string, SpikedStroke[]>;
  /**
   * Of each side, how many strokes there were before those while no warning was open, and how many of them had a spike.
   */
  usual: Record<string, { strokes: number; spiked: number }>;
  /** Of each side with an open warning, how often its strokes have peaked, from those that opened it on. */
  said: HowOftenOfSides;
  /** Where the latest stroke left the room; null: not known. */
  stands: Standing | null;
  /** Of each side, where its strokes together show that it draws more than it used to. */
  courses: Record<string, CourseMemory>;
}

/** How many strokes of a side are looked at together. */
const SPIKE_STROKES = 8;

/** No stroke yet. */
export function beginSpikeMemory(): SpikeMemory {
  return { sides: {}, usual: {}, said: {}, stands: null, courses: {} };
}

/**
 * Adds a stroke to the memory of a side, and answers its latest strokes. `isSaid`: whether a warning of this side is
 * open; such strokes do not count for how often it usually peaks.
 */
export function keepSpikes(
  memory: SpikeMemory,
  side: string,
  stroke: SpikedStroke,
  isSaid: boolean,
): readonly SpikedStroke[] {
  const kept = memory.sides[side] ?? [];
  kept.push(stroke);
  const left = kept.length > SPIKE_STROKES ? kept.shift() : undefined;
  if (left !== undefined && !isSaid) memory.usual[side] = withOneMore(memory.usual[side], left);
  memory.sides[side] = kept;
  keepHowOften(memory.said, side, isSaid, kept.map(isPeaked));
  return kept;
}

const isPeaked = ({ positions, swing, stillRises }: SpikedStroke): boolean =>
  positions.length > 0 || swing !== null || stillRises;

/** The fewest strokes without a peak that clear a warning: a guess, no source. */
const CLEAR_STROKES = 8;

/** Whether a side with a warning has gone without peaks for long enough to clear it. */
export function haveStopped({ said }: SpikeMemory, side: string): boolean {
  return isOverSince(said[side], CLEAR_STROKES);
}

/** Forgets the peaks and the course of a side whose warning is cleared, so that they do not count for what comes. */
export function forgetSaid(memory: SpikeMemory, side: string): void {
  const quiet = memory.said[side]?.quiet ?? 0;
  memory.sides[side] = quiet === 0 ? [] : (memory.sides[side] ?? []).slice(-quiet);
  delete memory.said[side];
  delete memory.courses[side];
}

/** How often a side usually peaks is told by about this many strokes; older ones fade away. */
const USUAL_STROKES = 100;

function withOneMore(
  usual: SpikeMemory['usual'][string] | undefined,
  { positions }: SpikedStroke,
): SpikeMemory['usual'][string] {
  const { strokes, spiked } = usual ?? { strokes: 0, spiked: 0 };
  const kept = strokes < USUAL_STROKES ? 1 : 1 - 1 / USUAL_STROKES;
  return { strokes: kept * strokes + 1, spiked: kept * spiked + (positions.length > 0 ? 1 : 0) };
}

/**
 * What a side is taken to have done before anything is known of it: one peaked stroke of twenty. A guess, no source.
 */
const BEFORE = { strokes: 20, spiked: 1 };
/**
 * A usual rate of peaked strokes never counts as more than this: a higher one is the fault looked for. A guess, no
 * source.
 */
const MOST_USUAL = 0.15;
/** The highest probability with which a healthy side may have that many peaked strokes among its latest. */
const BY_CHANCE = 0.006;

/**
 * How many of the latest strokes must have scattered peaks to be more than usual for the side: the least number that a
 * binomial distribution with the side's own usual rate reaches with a probability of at most `BY_CHANCE`, by the
 * incomplete beta function (NIST Digital Library of Mathematical Functions, 8.17.5).
 */
export function fewestScattered({ usual }: SpikeMemory, side: string): number {
  const { strokes, spiked } = usual[side] ?? { strokes: 0, spiked: 0 };
  const rate = Math.min(MOST_USUAL, (spiked + BEFORE.spiked) / (strokes + BEFORE.strokes));
  let count = 1;
  while (count < SPIKE_STROKES && atLeast(count, rate) > BY_CHANCE) count++;
  return count;
}

/** The probability of at least `count` peaked strokes among `SPIKE_STROKES`. */
const atLeast = (count: number, rate: number): number =>
  incompleteBeta(count, SPIKE_STROKES - count + 1, rate);
