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
  /** How far off they may be, parts of the travel: those of a part of a movement hang on where it began. */
  readonly unsure: number;
  readonly heights: readonly number[];
  /** The regular swing along the travel that the side did not use to have; null: none. */
  readonly swing: Swing | null;
  /** Whether the place where it was said to peak still draws more than it used to. */
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
  /** Of strokes before those, while nothing was said of peaks: how many there were, and how many had one. */
  usual: Record<string, { strokes: number; spiked: number }>;
  /** Of each side of which peaks are said, from the strokes that told them on. */
  said: HowOftenOfSides;
  /** Where the latest stroke left the room; null: not known. */
  stands: Standing | null;
  /** Of each side, what its strokes say together of where it draws more than it used to. */
  courses: Record<string, CourseMemory>;
}

/** How many strokes of a side are looked at together. */
const SPIKE_STROKES = 8;

/** No stroke yet. */
export function beginSpikeMemory(): SpikeMemory {
  return { sides: {}, usual: {}, said: {}, stands: null, courses: {} };
}

/** `isSaid`: peaks of this side are said already: how often they come then is not how often they did. */
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

/** So many strokes without a peak are the fewest that clear what was said: a guess, no source. */
const CLEAR_STROKES = 8;

/** Whether a side of which peaks were said has gone without any for long enough. */
export function haveStopped({ said }: SpikeMemory, side: string): boolean {
  return isOverSince(said[side], CLEAR_STROKES);
}

/** What was said is over: peaks from before that are none of what comes, nor what strokes said together. */
export function forgetSaid(memory: SpikeMemory, side: string): void {
  const quiet = memory.said[side]?.quiet ?? 0;
  memory.sides[side] = quiet === 0 ? [] : (memory.sides[side] ?? []).slice(-quiet);
  delete memory.said[side];
  delete memory.courses[side];
}

/** So many strokes tell how often a side peaks by itself; older ones are forgotten by and by. */
const USUAL_STROKES = 100;

function withOneMore(
  usual: SpikeMemory['usual'][string] | undefined,
  { positions }: SpikedStroke,
): SpikeMemory['usual'][string] {
  const { strokes, spiked } = usual ?? { strokes: 0, spiked: 0 };
  const kept = strokes < USUAL_STROKES ? 1 : 1 - 1 / USUAL_STROKES;
  return { strokes: kept * strokes + 1, spiked: kept * spiked + (positions.length > 0 ? 1 : 0) };
}

/** Before anything is known of a side it is held to peak on so many of so many strokes: a guess, no source. */
const BEFORE = { strokes: 20, spiked: 1 };
/** More than this a side may not come to peak by itself: that is what is looked for. A guess, no source. */
const MOST_USUAL = 0.15;
/** Sides in health have as many peaked strokes among the latest ones with this probability at most. */
const BY_CHANCE = 0.006;

/**
 * How many of the latest strokes must peak, here and there, to be more than how the side goes: the least number that a
 * binomial distribution with the side's own usual rate reaches with a probability of `BY_CHANCE` at most, by the incomplete
 * beta function (NIST Digital Library of Mathematical Functions, 8.17.5).
 */
export function fewestScattered({ usual }: SpikeMemory, side: string): number {
  const { strokes, spiked } = usual[side] ?? { strokes: 0, spiked: 0 };
  const rate = Math.min(MOST_USUAL, (spiked + BEFORE.spiked) / (strokes + BEFORE.strokes));
  let count = 1;
  while (count < SPIKE_STROKES && atLeast(count, rate) > BY_CHANCE) count++;
  return count;
}

/** The probability of at least so many peaked strokes among `SPIKE_STROKES`. */
const atLeast = (count: number, rate: number): number =>
  incompleteBeta(count, SPIKE_STROKES - count + 1, rate);
