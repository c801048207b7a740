import type { Direction } from '../../../analysis/trace.ts';
import type { WindingRoom } from './room.ts';

/** More (or less) force over a stretch of the travel. */
export interface Stretch {
  /** Positions, 0 retracted to 1 extended. */
  readonly from: number;
  readonly to: number;
  readonly newtons: number;
  readonly in: Direction | null;
}

/** What one clamp does to its side's record. */
export interface ClampState {
  gain: number;
  offsetAmps: number;
  noiseAmps: number;
  /** What it can show at most; infinity: its range. */
  clipAmps: number;
  /** Parts of the record without samples, from and to. */
  gaps: [number, number][];
  missedPart: number;
  /** Lies on the bench instead of around the wire. */
  isOff: boolean;
}

/** One side in one stroke, as factors on what the room is when healthy. */
export interface SideState {
  coulomb: number;
  viscous: number;
  wiper: number;
  stribeck: number;
  noLoad: number;
  newtonsPerAmp: number;
  extraLeadOhms: number;
  readonly stretches: Stretch[];
  /** Where the gear turns without the rack, from and to. */
  free: [number, number] | null;
  /** How much less the room moves than its gear does. */
  slip: number;
  readonly clamp: ClampState;
}

/** What feeds the motors: a source with its resistance, which leaves the rest to the battery beyond its limit. */
export interface Supply {
  readonly sourceVolts: number;
  readonly sourceOhms: number;
  readonly sourceLimitAmps: number;
  readonly batteryVolts: number;
  readonly batteryOhms: number;
  readonly cableOhms: number;
}

/** All that decides how one stroke goes and how it is recorded. */
export interface StrokeState {
  readonly direction: Direction;
  ambientC: number;
  /** Positive: the room runs out downhill. */
  tiltRadians: number;
  weight: number;
  supply: Supply;
  /** Where the room stands at the start. */
  startPosition: number;
  /** The first obstacle on the way; the end stop is beyond 0 and 1. */
  block: number | null;
  /** Where the limit switches open, as a part of the way; only where the controller has them. */
  limitSwitchPart: number;
  /** The hand lets go for a while at this part of the way. */
  pauseAtPart: number | null;
  pauseS: number;
  /** The hand lets go for good at this part of the way. */
  stopAtPart: number | null;
  /** How long the hand holds on after nothing moves. */
  releaseS: number;
  /** Clock of the record against the true time. */
  clockRate: number;
  /** Times at which the record's clock leaps, and how far, seconds. */
  clockLeaps: [number, number][];
  sides: SideState[];
}

function healthySide(): SideState {
  return {
    coulomb: 1,
    viscous: 1,
    wiper: 1,
    stribeck: 1,
    noLoad: 1,
    newtonsPerAmp: 1,
    extraLeadOhms: 0,
    stretches: [],
    free: null,
    slip: 0,
    clamp: {
      gain: 1,
      offsetAmps: 0,
      noiseAmps: 0,
      clipAmps: Number.POSITIVE_INFINITY,
      gaps: [],
      missedPart: 0,
      isOff: false,
    },
  };
}

/** A stroke of a healthy room at 20 °C on level ground with a full battery. */
export function ordinaryStroke(room: WindingRoom, direction: Direction): StrokeState {
  const { batteryOhms, sharedCableOhms } = room.wiring;
  const volts = (12.7 * room.facts.nominalVolts) / 12;
  return {
    direction,
    ambientC: 20,
    tiltRadians: 0,
    weight: 1,
    supply: {
      sourceVolts: volts,
      sourceOhms: batteryOhms,
      sourceLimitAmps: Number.POSITIVE_INFINITY,
      batteryVolts: volts,
      batteryOhms,
      cableOhms: sharedCableOhms,
    },
    startPosition: direction === 'extend' ? 0 : 1,
    block: null,
    limitSwitchPart: 0.996,
    pauseAtPart: null,
    pauseS: 0,
    stopAtPart: null,
    releaseS: 0.6,
    clockRate: 1,
    clockLeaps: [],
    sides: room.motors.map(healthySide),
  };
}
