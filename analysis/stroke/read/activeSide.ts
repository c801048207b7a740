import type { Direction } from '../../trace.ts';
import type { RestLevel } from '../rest/restLevel.ts';
import type { Interval } from '../signal/interval.ts';
import type { SideSignal } from '../signal/sideSignal.ts';
import type { Activity } from './activity.ts';

/** A side that was read: its signal, the sensor's rest, the current less that, and when it was driven. */
export interface ActiveSide {
  readonly signal: SideSignal;
  readonly rest: RestLevel;
  /** Less the offset; one per sample of the signal. */
  readonly amps: Float64Array;
  readonly active: Activity;
}

/** The same as it is measured: beside the other sides, and under the supply of the stroke. */
export interface SideToMeasure extends ActiveSide {
  /** When the whole room stood still. */
  readonly pauses: readonly Interval[];
  /** The supply at each sample of the signal; null where nobody recorded it. */
  readonly volts: Float64Array | null;
  readonly direction: Direction;
}
