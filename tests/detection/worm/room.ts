import type { RoomDescription } from '../../../analysis/trace.ts';
import type { Logger } from './logger.ts';
import type { Screw } from './screw.ts';

/** A permanent-magnet motor behind its worm, everything reduced to the room's travel. */
export interface Motor {
  /** At 20 °C, brushes and leads of its own included. */
  readonly ohm: number;
  /** Newtons of the room's travel per ampere, and volts per metre a second: the same number in SI. */
  readonly newtonsPerAmp: number;
  /** What the motor draws with nothing coupled to it, at 20 °C. */
  readonly idleAmps: number;
  /** Rotor and gears, seen at the travel. */
  readonly massKg: number;
  /** What the winding takes to warm by one degree. */
  readonly joulesPerDegree: number;
  readonly screw: Screw;
}

/** One driven side of a room. Loads are parts of `runNewtons`, the mean push on level ground at 20 °C. */
export interface Side {
  readonly name: string;
  readonly motor: Motor;
  readonly runNewtons: number;
  /** What it draws there. */
  readonly runAmps: number;
  /** Rubbing along the travel, by direction, in bins from retracted to extended. */
  readonly rubbing: { readonly extend: Float64Array; readonly retract: Float64Array };
  /** Seals that are squeezed or let go, and a floor that goes down or up a ramp: not changed by lubrication. */
  readonly standing: { readonly extend: Float64Array; readonly retract: Float64Array };
  /** How far its drive turns before it meets its load again after a reversal. */
  readonly playMetres: number;
}

/** How the controller starts, keeps together and stops the motors. */
export interface Controller {
  /** 0: full voltage at once. */
  readonly softStartS: number;
  /** The motor stands under voltage until its brake lets go. */
  readonly brakeS: number;
  /** Part of the duty that the leading side loses for each metre that it leads; 0: nothing keeps them in step. */
  readonly trimPerMetre: number;
  /** Ends one side by itself once it stalls, or all once the last has stalled. */
  readonly stops: 'each' | 'last';
}

/** What feeds the room. */
export interface Wiring {
  /** Battery, leads and controller, common to all sides. */
  readonly ohm: number;
}

/** A room of the worm fleet. */
export interface WormRoom {
  readonly facts: RoomDescription;
  readonly travelMetres: number;
  readonly strokeS: number;
  readonly toothMetres: number;
  readonly gearTeeth: number;
  readonly sides: readonly Side[];
  readonly controller: Controller;
  readonly wiring: Wiring;
  /** Force between the sides for each metre that one leads, a part of the running push; 0 within the frame's play. */
  readonly frame: { readonly partPerMetre: number; readonly playMetres: number };
  /** How far the stop gives under a stalled motor. */
  readonly stopGivesMetres: number;
  /** What cold adds to the rubbing, in the film's own exponential law. */
  readonly filmStiffening: number;
  readonly logger: Logger;
}

/** Bins of the travel in which loads are kept. */
export const TRAVEL_BINS = 1024;
