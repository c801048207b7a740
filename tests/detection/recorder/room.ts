import type { Direction, RoomDescription } from '../../../analysis/trace.ts';
import type { Course } from './course.ts';

/** How a motor is driven from its start on. */
export interface Controller {
  /** `relay`: full voltage at once; `ramp`: duty rises; `pulse`: a few short nudges, then full voltage. */
  readonly start: 'relay' | 'ramp' | 'pulse';
  /** Of the ramp. */
  readonly rampS: number;
  /** A controller with a current limit holds the motor below it; infinity: it has none. */
  readonly limitAmps: readonly number[];
  /** Part of the travel before the end in which it goes slower, and the duty there; 0: it does not. */
  readonly slowZone: number;
  readonly slowDuty: number;
  /** Hall sensors keep the sides in step: loss of duty for each part of the travel that a side leads; 0: no such thing. */
  readonly stepGain: number;
  /** How the drive is ended: the user lets go after a stall, the controller sees the stall, or a switch is met. */
  readonly end: 'user' | 'controller' | 'switch';
}

/** One motor with its gear as seen from its leads at 20 °C. */
export interface Motor {
  /** Running current in the middle of an extend stroke, amperes. */
  readonly runningAmps: number;
  readonly noLoadAmps: number;
  readonly ohms: number;
  /** Time constant of its run-up, seconds. */
  readonly runUpS: number;
  /** Speed against the room's nominal one at the same back voltage. */
  readonly quickness: number;
  /** Added load just after a start, as a part of the load, and how long it takes to settle, seconds. */
  readonly breakaway: number;
  readonly settleS: number;
  /** Cycles of commutator ripple over the whole travel, and its height as a part of the current. */
  readonly rippleCycles: number;
  readonly ripple: number;
  /** Turns of the rotor over the travel, and the current's swing with each. */
  readonly rotorTurns: number;
  readonly rotorSwing: number;
}

/** Clamps, converters and clock. */
export interface Logger {
  readonly rateHz: number;
  /** Standard deviation of each sample, amperes. */
  readonly noiseAmps: number;
  /** Standard deviation of the noise that wanders slowly, amperes. */
  readonly slowNoiseAmps: number;
  /** Step of the converter, amperes. */
  readonly stepAmps: number;
  readonly zeroAmps: readonly number[];
  /** Shift of the zero, amperes per °C from 20 °C. */
  readonly zeroAmpsPerC: number;
  readonly scale: readonly number[];
  /** Averages over each sample's interval; otherwise it reads a moment. */
  readonly averages: boolean;
  /** Standard deviation of the sampling moments as a part of the interval, and whether the times are told. */
  readonly jitter: number;
  readonly tellsTimes: boolean;
  /** Still samples before the start (negative: triggers late) and after the end, seconds. */
  readonly leadS: number;
  readonly tailS: number;
  readonly supplyRateHz: number | null;
  readonly supplyStepVolts: number;
  readonly recordsAmbient: boolean;
  readonly roundsToMinutes: boolean;
  readonly signed: boolean;
  readonly tellsDirection: boolean;
  /** Chance of each sample to be missed. */
  readonly missed: number;
}

/** How a room differs from one stroke and one camp to the next; standard deviations as parts of the load. */
export interface Scatter {
  readonly camp: number;
  readonly stroke: number;
  /** Of the share between the sides, by camp. */
  readonly tilt: number;
  /** Extend heavier and retract lighter, by camp. */
  readonly slope: number;
  /** Along the travel, anew in each stroke. */
  readonly wander: number;
  /** Rise of the load per °C below 20 °C. */
  readonly stiffening: number;
  /** Lasting change over the whole history, natural logarithm. */
  readonly ageing: number;
}

/** Climate of the places where the coach is used, °C, and how it is fed. */
export interface Places {
  readonly meanC: number;
  readonly swingC: number;
  readonly anomalyC: number;
  readonly yearRound: boolean;
  /** Chances of shore power and of solar charging; the rest is battery alone. */
  readonly shore: number;
  readonly solar: number;
  /** Ohms from the battery to the motors. */
  readonly lineOhms: number;
}

/** A slide room as the company's engineer would describe the rig for it. */
export interface RecorderRoom {
  readonly facts: RoomDescription;
  readonly motors: readonly Motor[];
  readonly controller: Controller;
  readonly logger: Logger;
  readonly scatter: Scatter;
  readonly places: Places;
  readonly courses: Readonly<Record<Direction, readonly Course[]>>;
  /** Of an extend stroke at nominal supply, seconds. */
  readonly durationS: number;
  readonly travelMetres: number;
  /** One turn of the drive's gear and one tooth, as parts of the travel. */
  readonly gearTurn: number;
  readonly tooth: number;
  readonly toothSwing: number;
  readonly turnSwing: number;
  /** Load that a leading side takes over for each part of the travel that it leads, as a part of its load. */
  readonly stiffness: number;
}

/** Volts at which the room's nominal figures hold. */
export function referenceVolts({ facts }: Pick<RecorderRoom, 'facts'>): number {
  return 1.05 * facts.nominalVolts;
}
