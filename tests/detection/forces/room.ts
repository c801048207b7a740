import type { Direction, RoomDescription } from '../../../analysis/trace.ts';

/** Volts at which a room's figures are given. */
export const USUAL_VOLTS = 12.6;

/** One motor and what it pushes. Forces are given in the amperes that they cost. */
export interface ForcesSide {
  readonly ohms: number;
  readonly henries: number;
  /** Back voltage of one whole travel a second, volt-seconds. */
  readonly backVoltS: number;
  /** Inertia: amperes that gain one travel a second each second. */
  readonly inertia: number;
  /** What the motor draws without any load. */
  readonly idleAmps: number;
  /** Coulomb friction by knots over the travel from retracted to extended, each way. */
  readonly coulombAmps: Readonly<Record<Direction, readonly number[]>>;
  /** Amperes of viscous friction at the usual speed, at 20 °C. */
  readonly viscousAmps: number;
  /** Breakaway: what friction is more at a standstill, as a part of Coulomb's, and how fast it goes with the speed. */
  readonly stribeck: { readonly part: number; readonly speedPart: number };
  /** Part of the force that swings with the gear's teeth, and with its turn. */
  readonly toothRipple: number;
  readonly turnRipple: number;
  readonly phase: number;
}

/** What turns a side's current into numbers. */
export interface ForcesClamp {
  readonly rangeAmps: number;
  readonly bits: number;
  readonly whiteAmps: number;
  /** Deviation of noise that falls with the frequency. */
  readonly pinkAmps: number;
  readonly hum: { readonly amps: number; readonly hertz: number };
  readonly zeroAmps: number;
  /** What the core keeps of the last current's sign. */
  readonly remanenceAmps: number;
  readonly gain: number;
}

export type EndsBy = 'end-stop' | 'switch' | 'user';

/** What is lasting about a room, its drive and its logger. */
export interface ForcesRoom {
  readonly facts: RoomDescription;
  readonly sides: readonly ForcesSide[];
  /** Running amperes of each side at the usual supply and 20 °C, each way. */
  readonly runningAmps: readonly Readonly<Record<Direction, number>>[];
  /** Seconds of a stroke at the usual supply. */
  readonly travelS: number;
  /** Speed at which viscous friction is given, travels a second. */
  readonly usualSpeed: number;
  readonly turn: number;
  /** A controller slows whichever side leads: volts' part for each part of the travel. 0: none. */
  readonly trim: number;
  /** What the box itself carries over from side to side at most, amperes. */
  readonly boxAmps: number;
  /** Seals at both ends: part of Coulomb friction more, and over which part of the travel. */
  readonly seal: { readonly part: number; readonly width: number };
  /** A cable's slack that is taken up first, part of the travel. */
  readonly slack: number;
  /** Part of the travel in which the end gives way before the motor stalls. */
  readonly endGives: number;
  readonly endsBy: EndsBy;
  /** How long a stall is held. */
  readonly stallS: number;
  readonly supplyOhms: number;
  readonly coldCoulomb: number;
  readonly coldViscous: number;
  /** Friction's own wandering: memory from stroke to stroke, spread of the room's, and of each side's. */
  readonly wander: { readonly memory: number; readonly room: number; readonly side: number };
  readonly clamps: readonly ForcesClamp[];
  /** Sides that have a clamp. */
  readonly recorded: readonly number[];
  readonly rateHz: number;
  readonly restS: { readonly before: number; readonly after: number };
  readonly supply: { readonly rateHz: number; readonly stepVolts: number } | null;
  readonly sendsAmbient: boolean;
  /** The current's sign tells the direction, and no other word does. */
  readonly signed: boolean;
  readonly timed: 'rate' | 'times';
}
