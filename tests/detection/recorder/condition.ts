import type { Direction } from '../../../analysis/trace.ts';
import type { Motor, RecorderRoom } from './room.ts';

/** A load beside the usual one, in multiples of the side's usual load, by position and by seconds since the start. */
export type AddedLoad = (side: number, position: number, seconds: number) => number;

/** What the clamps and the logger do otherwise than usual in one stroke; lists go by side. */
export interface Recording {
  readonly rateHz: number;
  readonly zeroAmps: readonly number[];
  readonly scale: readonly number[];
  readonly noiseAmps: readonly number[];
  readonly clipAmps: readonly number[];
  /** Part of the samples that is lost in bursts. */
  readonly gaps: readonly number[];
  /** A clamp that hangs beside its lead reads only its noise. */
  readonly clampOff: readonly boolean[];
  /** A side that is not sent at all. */
  readonly leftOut: readonly boolean[];
  readonly leadS: number;
  readonly tailS: number;
  readonly missed: number;
  /** Seconds told for each true second. */
  readonly clock: number;
}

/** Everything that makes one stroke what it is. */
export interface StrokeCondition {
  readonly direction: Direction;
  /** Positions from which it starts, and at which it is stopped. */
  readonly from: number;
  readonly to: number;
  /** `usual`: the room's own way; `stall`: against something, until let go; `let-go`: stopped in motion. */
  readonly ends: 'usual' | 'stall' | 'let-go';
  readonly ambientC: number;
  readonly windingC: number;
  /** Of the battery without load, and ohms from it to the motors. */
  readonly openVolts: number;
  readonly lineOhms: number;
  /** By side: factor on the load. */
  readonly level: readonly number[];
  readonly added: readonly AddedLoad[];
  /** By side: metres moved against those that the motor's turns should give. */
  readonly grip: readonly number[];
  /** Whether a side's motor turns without its half of the room, which goes where the other side goes, or nowhere. */
  readonly isLoose: (side: number, position: number) => boolean;
  readonly inStep: boolean;
  /** Work on the motors has changed them. */
  readonly motors: readonly Motor[];
  readonly pause: { readonly position: number; readonly seconds: number } | null;
  /** How long the user holds the switch after the stall, seconds. */
  readonly holdS: number;
  /** A second press at the end, seconds after the first; 0: none. */
  readonly jogAfterS: number;
  readonly recording: Recording;
}

/** The load's factor that raises a side's running current by a part of itself. */
export function loadFor(room: RecorderRoom, side: number, rise: number): number {
  const { runningAmps, noLoadAmps } = room.motors[side];
  return 1 + (rise * runningAmps) / (runningAmps - noLoadAmps);
}

/** A list with one entry changed. */
export function changedAt<Item>(list: readonly Item[], at: number, change: (item: Item) => Item): Item[] {
  return list.map((item, index) => (index === at ? change(item) : item));
}
