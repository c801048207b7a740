import type { Direction } from '../../trace.ts';

/** One measure of one stroke against rooms of the same coach model, on the measure's scale. */
export interface Above {
  readonly above: number;
  /** Standard deviation of how far a healthy room lies from the model, and of a stroke from its room. */
  readonly spread: number;
  readonly noise: number;
}

/** One side of one stroke against rooms of the same coach model. */
export interface AboveModel {
  /** Running current, natural logarithm. */
  readonly running: Above;
  /** Share of the load; null in a room of one side. */
  readonly share: Above | null;
  /** Degrees of freedom of the spreads. */
  readonly degrees: number;
  /** What the model's rooms need at 12.6 V and 20 °C, amperes. */
  readonly modelAmps: number;
}

/** What one stroke drew at its end stop, beside its start. */
export interface HeavyStop {
  readonly direction: Direction;
  /** As it was drawn, and brought to the reference supply, amperes. */
  readonly amps: number;
  readonly atReference: number;
  /** How far the start lies above it, natural logarithm. */
  readonly below: number;
}

/** Latest running currents of a side, the cold taken off, and stall currents, brought to 12.6 V: they are V/R. */
export interface HeavyMemory {
  amps: Record<Direction, number[]>;
  stall: number[];
  /** Of strokes that read start and stop. */
  stops: HeavyStop[];
  /** The most that a start was seen to draw, at the reference supply, amperes. */
  mostAmps: number;
  /** The latest strokes against rooms of the same coach model. */
  above: AboveModel[];
}

/** No stroke yet. */
export function beginHeavyMemory(): HeavyMemory {
  return { amps: { extend: [], retract: [] }, stall: [], stops: [], mostAmps: 0, above: [] };
}
