/** What stands beside the motor and writes the current down. */
export interface Logger {
  readonly rateHz: number;
  readonly averages: boolean;
  readonly bits: number;
  /** Amperes at the end of its scale; both ways when signed. */
  readonly rangeAmps: number;
  readonly signed: boolean;
  /** Leaves the direction to the current's sign. */
  readonly tellsDirection: boolean;
  readonly inMilliamps: boolean;
  readonly jitterPart: number;
  readonly noiseAmps: number;
  readonly zeroAmps: number;
  /** Standard deviation of a year's wander of the zero. */
  readonly zeroWanderAmps: number;
  readonly restBeforeS: number;
  readonly restAfterS: number;
  /** How late it wakes, seconds after the switch; 0: it looks back. */
  readonly lateS: number;
  readonly endsEarlyS: number;
  readonly dropChance: number;
  readonly thermometer: { readonly offsetC: number } | null;
  readonly supply: { readonly rateHz: number; readonly gain: number; readonly noiseVolts: number } | null;
}
