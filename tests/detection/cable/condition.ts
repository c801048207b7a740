import type { Direction } from '../../../analysis/trace.ts';

/** What one stroke meets; a fault changes it. Factors are 1 in a sound room. */
export interface Condition {
  readonly sides: readonly SideCondition[];
  openVolts: number;
  rippleVolts: number;
  batteryOhm: number;
  contactOhm: number;
  ambientC: number;
  /** Of each armature above the air, as the stroke begins. */
  warmC: readonly number[];
  /** Positive where the room goes out downhill. */
  tiltRadians: number;
  /** What the cupboards make of the room's weight. */
  load: number;
  /** Of the seals and guides after a stay of so many days. */
  stayDays: number;
  rollerFlat: number;
  topper: number;
  from: number;
  to: number;
  /** The slack is to be taken up: the last stroke went the other way. */
  reversed: boolean;
  /** How long the switch is held once nothing moves. */
  holdS: number;
  pauses: readonly { readonly at: number; readonly offS: number }[];
  /** Something stands in the way there (a part of the travel); null: nothing. */
  blockedAt: number | null;
  /** Places where drum or coupling slips for so long before it takes hold again. */
  slips: { readonly at: number; readonly seconds: number }[];
  /** Whoever holds the switch sees nothing happen, and lets go; null: never. */
  givesUpS: number | null;
  clock: number;
}

export interface SideCondition {
  rolling: number;
  wiper: number;
  grease: number;
  bumps: Bump[];
  stretches: Stretch[];
  turnBump: { readonly newtons: number; readonly widthMetres: number; readonly phaseMetres: number } | null;
  /** Parts of the travel where the motor has hold of nothing. */
  lost: Stretch[];
  ohm: number;
  magnets: number;
  reading: Reading;
}

export interface Bump {
  readonly position: number;
  readonly widthMetres: number;
  readonly newtons: number;
  readonly direction: Direction | null;
}

/** From one position to another, with what it adds to the rolling, as a part of it. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly part: number;
}

export interface Reading {
  gain: number;
  zeroAmps: number;
  noiseAmps: number;
  clipAmps: number;
  missedPart: number;
  off: boolean;
}
