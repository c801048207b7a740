import type { Direction } from '../../../analysis/trace.ts';

/** One side as a logger sends it (contract section 4): `rateHz` or `t`, `amps` or `milliamps`. */
export interface SideRecord {
  readonly side: string;
  readonly rateHz?: number;
  readonly t?: readonly number[];
  readonly amps?: readonly (number | null)[];
  readonly milliamps?: readonly number[];
}

/** The JSON of one stroke, less `key` and `roomId`, which are the sender's. */
export interface StrokeRecord {
  readonly direction?: Direction;
  readonly startedAt: string;
  readonly sides: readonly SideRecord[];
  readonly supply?: { readonly rateHz: number; readonly volts: readonly number[] };
  readonly ambientC?: number;
}
