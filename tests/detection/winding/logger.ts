/** A small logger as it was bought and fitted: what it does to the current before anyone sees it. */
export interface ClampLogger {
  /** By side. */
  readonly rateHz: readonly number[];
  /** The rate after its settings were changed once, by side; null: never. */
  readonly laterRateHz: readonly number[] | null;
  readonly bits: number;
  /** Full scale, either way. */
  readonly rangeAmps: number;
  readonly noiseAmps: number;
  readonly offsetAmps: number;
  /** What remains in the clamp's core after a large current. */
  readonly hysteresisAmps: number;
  /** Means over each sample's time; else a moment, which also catches the commutator's ripple. */
  readonly averages: boolean;
  readonly ripplePart: number;
  /** On the motor's own lead, where reversing shows as a negative current; else on the controller's feed. */
  readonly onMotorLead: boolean;
  readonly tellsDirection: boolean;
  readonly sendsTimes: boolean;
  readonly jitterS: number;
  readonly missedPart: number;
  readonly sendsMilliamps: boolean;
  /** Rest before the switch is pressed; negative: it woke up so much late. */
  readonly leadS: number;
  readonly tailS: number;
  readonly supplyRateHz: number | null;
  readonly supplyOffsetVolts: number;
  readonly recordsAmbient: boolean;
  readonly ambientOffsetC: number;
}
