/** More or less push over a short way of the travel. */
export interface Bump {
  readonly position: number;
  readonly halfWidth: number;
  /** Part of the running push, at its top. */
  readonly part: number;
}

/** What a clamp makes of the current. */
export interface ReadingCondition {
  gain: number;
  zeroAmps: number;
  addedNoiseAmps: number;
  clipAmps: number;
  missedShare: number;
  /** Hangs beside the wire. */
  off: boolean;
}

/** One side during one stroke. */
export interface SideCondition {
  /** Factor on the rubbing. */
  rubbing: number;
  /** Push that no lubricant changes: tilt, a part of the running push. */
  pull: number;
  bumps: Bump[];
  /** Stretches of the travel where only a part of the load is left. */
  lost: { readonly from: number; readonly to: number; readonly left: number }[];
  /** A drive that meets no stop: its shaft has come loose. */
  loose: boolean;
  addedWayMetres: number;
  /** Travel made for each metre that the motor turns. */
  grip: number;
  magnets: number;
  winding: number;
  reading: ReadingCondition;
}

/** One stroke, as weather, ground, supply and faults make it. */
export interface Condition {
  readonly sides: SideCondition[];
  openVolts: number;
  addedOhm: number;
  readonly ambientC: number;
  /** Winding above ambient as the stroke begins. */
  readonly warmC: number;
  /** Where the stroke begins and meets its end, parts of its own way. */
  from: number;
  to: number;
  /** Ends against a stop, or because somebody let the switch go. */
  stalls: boolean;
  readonly holdS: number;
  /** Part of the way at which somebody lets go for a while, and for how long. */
  readonly pause: { readonly at: number; readonly forS: number } | null;
  /** Real seconds for each second of the logger's clock. */
  clock: number;
}
