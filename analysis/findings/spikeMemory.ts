import type { Direction } from '../trace.ts';
import type { Swing } from './swing.ts';

/** The spikes of one of the latest strokes on one side; heights as parts of the running current. */
export interface SpikedStroke {
  readonly direction: Direction;
  readonly positions: readonly number[];
  readonly heights: readonly number[];
  /** The regular swing along the travel that the side did not use to have; null: none. */
  readonly swing: Swing | null;
}

/** The latest strokes of each side, oldest first, those without a spike included. */
export interface SpikeMemory {
  sides: Record<string, SpikedStroke[]>;
}

/** How many strokes of a side are looked at together. */
export const SPIKE_STROKES = 8;

export function beginSpikeMemory(): SpikeMemory {
  return { sides: {} };
}

export function keepSpikes(memory: SpikeMemory, side: string, stroke: SpikedStroke): readonly SpikedStroke[] {
  const kept = memory.sides[side] ?? [];
  kept.push(stroke);
  if (kept.length > SPIKE_STROKES) kept.shift();
  memory.sides[side] = kept;
  return kept;
}
