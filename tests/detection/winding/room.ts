import type { RoomDescription } from '../../../analysis/trace.ts';
import type { ClampLogger } from './logger.ts';

/** One side's motor with its gearbox, brought to the travel: a metre a second instead of radians a second. */
export interface Motor {
  /** Winding and brushes at 20 °C. */
  readonly ohmsAt20C: number;
  /** Its own cable and relay contacts. */
  readonly leadOhms: number;
  /** Back-EMF for each metre a second; the same number is newtons for each ampere (Ke = Kt). */
  readonly newtonsPerAmp: number;
  readonly noLoadAmps: number;
  /** Rotor and gears, as a mass on the rack. */
  readonly massKg: number;
  readonly gearEfficiency: number;
  readonly windingJoulesPerKelvin: number;
  readonly windingKelvinPerWatt: number;
}

/** What one side's motor has to move: forces in newtons at 20 °C and the room's ordinary speed. */
export interface Guide {
  readonly coulombNewtons: number;
  readonly wiperNewtons: number;
  readonly viscousNewtonSecondsPerMetre: number;
  /** Friction at creeping speed above that at full speed, as a part of the Coulomb friction. */
  readonly stribeckPart: number;
  readonly stribeckMetresPerSecond: number;
  /** Friction after a rest above that at creeping speed, as a part of the Coulomb friction. */
  readonly breakawayPart: number;
  /** Factor on the Coulomb friction along the travel, retracted first; its mean is 1. */
  readonly course: Float64Array;
  /** Bulb seals when fully pressed, at the retracted and the extended end. */
  readonly bulbNewtons: readonly [number, number];
  readonly bulbMetres: number;
  /** Play of rack and gear, or slack of a rope. */
  readonly backlashMetres: number;
  /** Of rack and mounts, or the rope. */
  readonly stiffnessNewtonsPerMetre: number;
}

/** How a controller keeps two motors in step: not at all, slowing the one ahead, or pausing it. */
export type Pacing = 'none' | 'pwm' | 'pause';

/** What ends a stroke: the hand on the switch, a current limit, or limit switches before the stop. */
export type Ending = 'hand' | 'current-limit' | 'limit-switch';

export interface Controller {
  readonly pacing: Pacing;
  readonly ending: Ending;
  readonly softStartS: number;
  readonly limitAmps: number;
  readonly limitS: number;
  /** From this lead on the one ahead is slowed or paused. */
  readonly leadMetres: number;
}

/** How temperature changes the guides. */
export interface ColdResponse {
  readonly coulombPerKelvin: number;
  readonly wiperPerKelvin: number;
  readonly viscousPerKelvin: number;
  readonly noLoadPerKelvin: number;
  readonly magnetPerKelvin: number;
}

/** The coach's wiring and battery as the room knows them. */
export interface Wiring {
  readonly batteryOhms: number;
  readonly sharedCableOhms: number;
  /** How often it runs on shore power, on the engine's alternator, else on the battery alone. */
  readonly shorePart: number;
  readonly enginePart: number;
  readonly chargerAmps: number;
}

export interface WindingRoom {
  readonly facts: RoomDescription;
  readonly travelMetres: number;
  readonly teeth: number;
  readonly pitchMetres: number;
  readonly weightNewtons: number;
  /** Seconds of one stroke at 20 °C and 12.6 V, about. */
  readonly durationS: number;
  readonly runningAmps: number;
  readonly motors: readonly Motor[];
  readonly guides: readonly Guide[];
  /** Rollers climbing to or from a flush floor near the extended end, as a slope; 0: none. */
  readonly rampSlope: number;
  /** What a wide room lets one side run ahead before its frame pulls at the other. */
  readonly rackingPlayMetres: number;
  readonly rackingNewtonsPerMetre: number;
  readonly rackingLimitNewtons: number;
  readonly controller: Controller;
  readonly cold: ColdResponse;
  readonly wiring: Wiring;
  readonly logger: ClampLogger;
  /** Standard deviations of the friction from camp to camp and from stroke to stroke. */
  readonly campSpread: number;
  readonly strokeSpread: number;
}
