/** A current that rose to no more than this of the running one is that of a motor switched off before it stood still. */
export const LEAST_STANDSTILL = 1.6;

/**
 * How far a motor turned on one stroke, in ampere-seconds, counted without knowing its supply: it turns at
 * `ω = (V − I·R)/Ke` and draws `V/R` at standstill, so that over a stroke it turns by `R/Ke` times this (the steady state
 * of a permanent-magnet motor, as in `steadyState.ts`). A weak supply and a stiff room leave it as it is; cold copper and
 * a clamp that reads too much raise it.
 *
 * Amperes and seconds of one side. What it draws at standstill is read at the end stop, or where it came to none at the
 * start, whose peak is never quite that: turns counted by the one are not to be held against turns counted by the other.
 * Null where that is hardly more than the running current. A stall that was let go while the motor was still coming to a
 * stand reads less than that, and the turns seem fewer (`stallHeld.ts`).
 */
export function turnsAs(stroke: DrawnByMotor & { readonly durationS: number }): number | null {
  if (!isStandstillRead(stroke)) return null;
  return (standstillAmps(stroke) - stroke.runningAmps) * stroke.durationS;
}

/** What a motor drew on one stroke, amperes; `endStopAmps`: null where it came to no stop. */
interface DrawnByMotor {
  readonly endStopAmps: number | null;
  readonly inrushAmps: number;
  readonly runningAmps: number;
}

/** What is read of a motor at standstill, amperes: at the end stop, or where it came to none at the start. */
export function standstillAmps({ endStopAmps, inrushAmps }: Omit<DrawnByMotor, 'runningAmps'>): number {
  return endStopAmps ?? inrushAmps;
}

/** Whether that is far enough above the running current to be what it draws at standstill. */
export function isStandstillRead(drawn: DrawnByMotor): boolean {
  return standstillAmps(drawn) >= LEAST_STANDSTILL * drawn.runningAmps;
}
