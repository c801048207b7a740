import type { Direction, StrokeTrace } from '../analysis/trace.ts';
import { weatherOf } from './weather.ts';

/** When the samples were taken: a steady rate from `startedAt` on, or seconds from it, strictly rising. */
export type Clock = { readonly rateHz: number } | { readonly t: Float64Array };

export interface RecordedSide {
  readonly side: string;
  readonly clock: Clock;
  /** Amperes as sent; NaN is a missed sample. */
  readonly amps: Float64Array;
  /** Where whole counts of a converter were sent: what they were multiplied by. It need not be told, but saves finding it. */
  readonly ampsPerCount?: number;
}

export interface RecordedSupply {
  readonly clock: Clock;
  /** As sent; NaN is a missed reading. */
  readonly volts: Float64Array;
}

/** The samples of one stroke exactly as sent: nothing rounded, nothing interpreted. */
export interface RecordedTrace {
  readonly sides: readonly RecordedSide[];
  readonly supply: RecordedSupply | null;
  readonly ambientC: number | null;
}

/** One stroke as every decoder hands it on, whatever the format it came in. */
export interface IncomingStroke extends RecordedTrace {
  readonly key: string;
  readonly roomId: string;
  /** null: to be told by the sign of the current. */
  readonly direction: Direction | null;
  /** Milliseconds since 1970. */
  readonly startedAtMs: number;
}

/** The times of `count` samples, seconds from the stroke's `startedAt`. */
export function sampleTimes(clock: Clock, count: number): Float64Array {
  if ('t' in clock) return clock.t;
  const times = new Float64Array(count);
  for (let i = 0; i < count; i++) times[i] = i / clock.rateHz;
  return times;
}

/** The recorded samples in the form that the analysis takes. */
export function toStrokeTrace(recorded: RecordedTrace, direction: Direction | null): StrokeTrace {
  return {
    direction,
    sides: recorded.sides.map(({ side, clock, amps }) => ({
      side,
      timesS: sampleTimes(clock, amps.length),
      amps,
    })),
    supply: recorded.supply && readingsOf(recorded.supply),
    ambientC: weatherOf(recorded.ambientC),
  };
}

/** The readings that there are: between them the analysis goes by their neighbours. Null where all were missed. */
function readingsOf({ clock, volts }: RecordedSupply): StrokeTrace['supply'] {
  const timesS = sampleTimes(clock, volts.length);
  if (!volts.some(Number.isNaN)) return { timesS, volts };
  const isRead = (_: number, i: number) => !Number.isNaN(volts[i]);
  const read = { timesS: timesS.filter(isRead), volts: volts.filter(isRead) };
  return read.volts.length === 0 ? null : read;
}
