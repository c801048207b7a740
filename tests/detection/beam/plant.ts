import type { RoomDescription } from '../../../analysis/trace.ts';

/** One guided edge of the room's body. */
export interface Edge {
  /** Dry friction at 20 °C where the profile is 1, newtons. */
  readonly coulombNewtons: number;
  /** Drag of the grease at 20 °C, newtons for each metre a second. */
  readonly viscousNewtonSeconds: number;
  /** How the friction varies along the travel: amplitude and phase of its first waves. */
  readonly waves: readonly { readonly amplitude: number; readonly phase: number }[];
}

/** A permanent-magnet motor with its gear, seen from the rack. */
export interface Motor {
  readonly windingOhm: number;
  readonly cableOhm: number;
  /** Volts for each metre a second of rack travel; in SI also newtons for each ampere, before losses. */
  readonly emf: number;
  /** Part of the torque that the gear passes on while driving. */
  readonly efficiency: number;
  /** The motor's and worm's own dry friction, newtons at the rack. */
  readonly ownNewtons: number;
  /** The gearbox grease's drag at 20 °C, newtons for each metre a second. */
  readonly ownNewtonSeconds: number;
  /** Rotor's inertia seen at the rack, kilograms. */
  readonly reflectedKg: number;
  /** Joules that warm the winding by 1 K. */
  readonly joulesPerKelvin: number;
}

/** What supplies the motors. */
export interface Source {
  readonly internalOhm: number;
  /** From the battery to the controller, the ground's return included. */
  readonly feedOhm: number;
  /** The converter's or alternator's limit before the battery must help, amperes. */
  readonly chargerAmps: number;
}

/** How two motors are kept in step; `loose` and `tight` are open loop, and differ in the guides' play. */
export type Coupling = 'one-motor' | 'pulses' | 'loose' | 'tight';

/** What ends a stroke: the user's thumb, a controller's current limit, a limit switch, or a controller that limits the
 * current, holds the room against its stop for a while, and stops by its timer at the latest. */
export type Ending = 'released' | 'cut-off' | 'switch' | 'timed';

export interface Control {
  readonly coupling: Coupling;
  readonly ending: Ending;
  /** Per motor, amperes: trips a `cut-off`; a `timed` controller holds the current there. */
  readonly limitAmps: readonly number[];
  /** How long the limit must be exceeded, seconds. */
  readonly tripS: number;
  /** Run time of a `timed` stroke, and the longest of any other, seconds. */
  readonly longestS: number;
  /** The controller's ramp from rest, seconds; 0: none. */
  readonly rampS: number;
  /** Travel for each counted pulse, metres. */
  readonly pulseMetres: number;
}

/** The instrument. */
export interface Logger {
  readonly rateHz: number;
  readonly noiseAmps: number;
  readonly offsetAmps: readonly number[];
  readonly scale: readonly number[];
  /** The clamp's own lag, seconds. */
  readonly lagS: number;
  /** The smallest difference that it tells, amperes. */
  readonly resolutionAmps: number;
  readonly form: 'amps' | 'milliamps' | 'times';
  /** Whether a retract reads negative. */
  readonly signed: boolean;
  readonly tellsDirection: boolean;
  readonly supply: { readonly rateHz: number; readonly sense: 'battery' | 'controller' } | null;
  readonly ambient: boolean;
}

/** One slide room, healthy: everything that does not change from stroke to stroke. */
export interface Plant {
  readonly facts: RoomDescription;
  readonly travelMetres: number;
  readonly massKg: number;
  /** The yaw inertia seen as a mass at the edges, kilograms. */
  readonly yawKg: number;
  /** Half of the edges' difference at which the guides begin to bear, metres. */
  readonly playMetres: number;
  /** Beyond the play, newtons for each metre of difference. */
  readonly yawNewtonsPerMetre: number;
  /** Friction for each newton that bears while yawed. */
  readonly wedging: number;
  readonly edges: readonly [Edge, Edge];
  readonly motors: readonly Motor[];
  readonly stribeck: { readonly rise: number; readonly metresPerSecond: number };
  /** How fast the grease thickens, for each °C. */
  readonly greasePerC: number;
  /** How dry friction rises in the cold, for each °C. */
  readonly coulombPerC: number;
  /** Compression at full closing, newtons an edge, and over what length. */
  readonly seals: { readonly newtons: number; readonly metres: number };
  /** A ramp of a flush floor before full extension, newtons an edge (0: a flat floor), and its length. */
  readonly ramp: { readonly newtons: number; readonly metres: number };
  readonly toothMetres: number;
  /** A turn of the gear along the rack. */
  readonly gearMetres: number;
  readonly backlashMetres: number;
  readonly source: Source;
  readonly control: Control;
  readonly logger: Logger;
  /** At 12.6 V and 20 °C, on the level. */
  readonly nominal: { readonly amps: readonly number[]; readonly speed: number; readonly seconds: number };
}

/** Newtons for each metre of wind-up between motor and edge, and newtons for each metre a second. */
export const MESH = { stiffness: 4e6, damping: 4e4 };
/** The stops' bulbs. */
export const STOP = { stiffness: 2.5e6, damping: 2e4 };
