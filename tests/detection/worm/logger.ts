/** How a room's current is read and written down. */
export interface Logger {
  readonly rateHz: readonly number[];
  /** Averages over a sample's time, or looks at its instant. */
  readonly averages: boolean;
  readonly fullScaleAmps: number;
  readonly bits: number;
  /** Reads the reversed motor negative, or the current's size alone. */
  readonly signed: boolean;
  readonly givesDirection: boolean;
  /** Constant error of each clamp's scale. */
  readonly gains: readonly number[];
  readonly noiseAmps: number;
  /** Commutation that a sample catches, as a part of the current. */
  readonly ripple: number;
  /** Recorded before the motor gets voltage; below 0: the logger wakes after it. */
  readonly leadInS: number;
  readonly leadOutS: number;
  readonly missedShare: number;
  readonly writes: 'amps' | 'milliamps' | 'instants';
  /** Of the instants, where they are written down. */
  readonly jitterS: number;
  readonly supply: { readonly rateHz: number; readonly zeroVolts: number; readonly stepVolts: number } | null;
  readonly thermometer: { readonly zeroC: number; readonly stepC: number } | null;
}
