import type { Direction } from '../../../analysis/trace.ts';
import type { Plant } from './plant.ts';

/** Something on a rail that the edge must ride over, in either direction. */
export interface Bump {
  readonly centreMetres: number;
  readonly widthMetres: number;
  readonly newtons: number;
}

/** A gear that climbs out of its rack: the force rises over one length, then nothing is passed on over another. */
export interface Slip {
  readonly atMetres: number;
  readonly climbMetres: number;
  readonly newtons: number;
  readonly freeMetres: number;
  /** A clutch takes hold anywhere, a gear at its next tooth. */
  readonly inClutch: boolean;
}

/** A broken tooth, in the gear's own angle as travel. */
export interface BrokenTooth {
  readonly turnMetres: number;
  readonly phaseMetres: number;
  readonly gapMetres: number;
  readonly rideMetres: number;
  readonly newtons: number;
}

export interface EdgeState {
  /** Factors on the plant's own. */
  coulomb: number;
  viscous: number;
  /** Further factor on the friction that fades over the first part of the travel, after a long rest. */
  stuck: number;
  bumps: Bump[];
  /** Where the rack does not mesh, metres. */
  bare: { from: number; to: number } | null;
  slips: Slip[];
  tooth: BrokenTooth | null;
  /** Further slack between motor and edge, metres. */
  slackMetres: number;
  /** This stroke's own small waves along the travel. */
  texture: number;
}

export interface MotorState {
  windingFactor: number;
  emfFactor: number;
  /** Brushes, terminals, a bad cable. */
  furtherOhm: number;
  ownFactor: number;
  /** Drag of currents within the armature, newtons for each metre a second. */
  brakes: number;
  /** Part of the controller's pulses from this motor that get lost. */
  lostPulses: number;
}

/** What the user does besides holding the switch until the room stands. */
export interface UserHabit {
  /** After the stall, seconds. */
  releaseS: number;
  pauses: { atPart: number; seconds: number }[];
  /** Lets go for good at this part of the stroke's way; null: holds on. */
  stopsAtPart: number | null;
  /** A second short press to be sure, and how long after the first, seconds; 0: none. */
  jogS: number;
  jogAfterS: number;
}

export interface ClampState {
  offsetAmps: number;
  scale: number;
  noiseFactor: number;
  /** The converter's end, amperes. */
  clipAmps: number;
  /** Part of the samples lost, in runs. */
  lostPart: number;
  missing: boolean;
  left: boolean;
}

export interface LoggerState {
  clamps: ClampState[];
  rateHz: number;
  /** Seconds before the motors start; negative: the record begins late. */
  beforeS: number;
  /** After the last motor is off. */
  afterS: number;
  clockFactor: number;
}

/** Everything that makes one stroke what it is. Built afresh for each stroke and then changed by nuisances and faults. */
export interface Condition {
  readonly index: number;
  atMs: number;
  direction: Direction;
  ambientC: number;
  source: { restVolts: number; chargerVolts: number | null; internalFactor: number; furtherFeedOhm: number };
  /** The coach's slope along the travel, radians, positive: the room runs out by itself. */
  slope: number;
  /** Part of the weight that moves from the second edge to the first. */
  lean: number;
  massFactor: number;
  edges: [EdgeState, EdgeState];
  motors: MotorState[];
  /** Something in the way, metres, in one direction only. */
  obstacleMetres: number | null;
  timerS: number | null;
  user: UserHabit;
  logger: LoggerState;
}

/** The level coach at 20 °C and 12.6 V that the plant's nominal values are meant for. */
export function restCondition(plant: Plant, index = 0, direction: Direction = 'extend'): Condition {
  const edge = (): EdgeState => ({
    coulomb: 1,
    viscous: 1,
    stuck: 0,
    bumps: [],
    bare: null,
    slips: [],
    tooth: null,
    slackMetres: 0,
    texture: 0,
  });
  return {
    index,
    atMs: 0,
    direction,
    ambientC: 20,
    source: { restVolts: 12.75, chargerVolts: null, internalFactor: 1, furtherFeedOhm: 0 },
    slope: 0,
    lean: 0,
    massFactor: 1,
    edges: [edge(), edge()],
    motors: plant.motors.map(() => ({
      windingFactor: 1,
      emfFactor: 1,
      furtherOhm: 0,
      ownFactor: 1,
      brakes: 0,
      lostPulses: 0,
    })),
    obstacleMetres: null,
    timerS: null,
    user: { releaseS: 0.7, pauses: [], stopsAtPart: null, jogS: 0, jogAfterS: 1 },
    logger: {
      clamps: plant.logger.scale.map((scale, motor) => ({
        offsetAmps: plant.logger.offsetAmps[motor],
        scale,
        noiseFactor: 1,
        clipAmps: Number.POSITIVE_INFINITY,
        lostPart: 0,
        missing: false,
        left: false,
      })),
      rateHz: plant.logger.rateHz,
      beforeS: 0.4,
      afterS: 0.5,
      clockFactor: 1,
    },
  };
}
