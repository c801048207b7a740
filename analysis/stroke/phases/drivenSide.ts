import { median } from '../../statistics/median.ts';
import type { ActiveSide } from '../read/activeSide.ts';
import { firstAtOrAfter, type Interval, lastS } from '../signal/interval.ts';
import { outsideOf } from '../signal/outsideOf.ts';
import type { SideSignal } from '../signal/sideSignal.ts';

/**
 * One side from the sample at which it was switched on to the one at which it was off again. Its phases are found in
 * this.
 */
export interface DrivenSide {
  readonly signal: SideSignal;
  /** Amperes less the offset, one per sample of the signal. */
  readonly amps: Float64Array;
  /** The offset that was taken off `amps`, amperes. */
  readonly offsetAmps: number;
  /** The first sample that is driven, and the first one that no longer is. */
  readonly first: number;
  readonly end: number;
  /** What it drew for most of that time, amperes: the median outside the pauses. */
  readonly level: number;
  /** How long it was driven, seconds, less the pauses. */
  readonly durationS: number;
}

/** What was driven of one side. `pauses`: when the whole room stood still. */
export function drivenSide(
  { signal, rest, amps, active }: ActiveSide,
  pauses: readonly Interval[],
): DrivenSide {
  const { timesS } = signal;
  return {
    signal,
    amps,
    offsetAmps: rest.offsetAmps ?? 0,
    first: firstAtOrAfter(timesS, active.fromS),
    end: firstAtOrAfter(timesS, active.toS),
    level: median(outsideOf(timesS, amps, active, pauses)),
    durationS: active.toS - active.fromS - lastS(pauses),
  };
}
