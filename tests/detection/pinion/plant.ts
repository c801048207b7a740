import type { RoomDescription } from '../../../analysis/trace.ts';

/** A motor with its gearbox, as the room's edge feels it: one linear machine. */
export interface Motor {
  /** Volts for each metre a second, and newtons for each ampere before the gearbox's losses, at 20 °C. */
  readonly voltsPerSpeed: number;
  /** Part of the force that the worm and gears let through. */
  readonly efficiency: number;
  /** Of the winding with its leads, at 20 °C. */
  readonly ohms: number;
  readonly henries: number;
  readonly brushVolts: number;
  /** Current that the motor and its gearbox need alone. */
  readonly idleAmps: number;
  /** Rotor, gearbox and its part of the room, as felt at the rack. */
  readonly kilograms: number;
  /** Kelvin for each joule put into the winding. */
  readonly kelvinPerJoule: number;
  /** In which the winding gives its heat to the magnets and the housing, and that to the air. */
  readonly windingS: number;
  readonly housingS: number;
}

/** What resists along the travel, as parts of the side's usual force (newtons over newtons). */
export interface Geometry {
  /** Of the rollers: even along the travel, and how much more fully out than fully in, as the room hangs over. */
  readonly rolling: number;
  readonly overhang: number;
  readonly wiper: number;
  /** Awning over the room, wound against its spring: at the start, and what full travel adds. */
  readonly topper: number;
  readonly topperRise: number;
  /** Bulb seals squeezed over the last part of travel at each end: peak, and the part of travel. */
  readonly sealIn: number;
  readonly sealOut: number;
  readonly sealPart: number;
  /** Glides that let the room down onto a flush floor near its outer end: force up or down, and where it begins. */
  readonly ramp: number;
  readonly rampFrom: number;
  readonly viscous: number;
  /** Ripple of the mesh of teeth, and of a pinion that runs out of true. */
  readonly toothRipple: number;
  readonly turnRipple: number;
  /** Where on the turn the pinion stands with the room fully in, radians. */
  readonly turnPhase: number;
  /** Seams and carpet edges that were always there: position, part of travel, height. */
  readonly seams: readonly { readonly position: number; readonly width: number; readonly height: number }[];
}

export interface Side {
  readonly name: string;
  readonly motor: Motor;
  readonly geometry: Geometry;
  /** Usual running current and the force that goes with it. */
  readonly runningAmps: number;
  readonly newtons: number;
}

/** How the motors are switched. */
export interface Controller {
  /** `relays`: full supply to all while the user holds the switch; `ramp`: a soft start; `step`: counts Hall pulses and holds back the side that leads. */
  readonly kind: 'relays' | 'ramp' | 'step';
  readonly rampS: number;
  /** Part of the voltage taken from the leading side for each metre that it leads. */
  readonly stepGain: number;
  /** Metres of travel for each counted pulse. */
  readonly countMetres: number;
  readonly limitAmps: number | null;
  /** From standstill to cut-off; for relays it is the user who lets go. */
  readonly stallS: number;
  /** Whether an open relay shorts the motor, whose brake current the sensor then sees. */
  readonly shorts: boolean;
}

/** What records the room. */
export interface Logger {
  readonly sensor: 'clamp' | 'shunt';
  readonly rateHz: number;
  readonly noiseAmps: number;
  readonly resolutionAmps: number;
  readonly offsetAmps: readonly number[];
  readonly gain: readonly number[];
  /** Amperes of offset for each kelvin from 20 °C. */
  readonly driftAmpsPerK: number;
  /** Half width of the clamp's hysteresis, and what a full inrush leaves behind, amperes. */
  readonly playAmps: number;
  readonly remanenceAmps: number;
  /** Whether a sample is the mean over its period, else of its moment. */
  readonly averages: boolean;
  readonly times: 'rate' | 'jittered';
  readonly missedPart: number;
  readonly beforeS: number;
  readonly afterS: number;
  /** Whether a retracting current is written below 0. */
  readonly signed: boolean;
  readonly tellsDirection: boolean;
  readonly clockFactor: number;
  readonly supply: {
    readonly rateHz: number;
    readonly offsetVolts: number;
    readonly noiseVolts: number;
  } | null;
  readonly ambient: { readonly offsetK: number } | null;
}

export interface Supply {
  /** From the battery's posts to the controller, ohms. */
  readonly feedOhms: number;
  readonly batteryOhms: number;
  /** Open voltage of the three things that can feed the room. */
  readonly batteryVolts: number;
  readonly shoreVolts: number;
  readonly engineVolts: number;
  readonly habit: 'camper' | 'shore' | 'motorhome';
}

/** Everything about a room that does not change from stroke to stroke. */
export interface Plant {
  readonly facts: RoomDescription;
  readonly travelMetres: number;
  /** Of the pinion along the rack. */
  readonly turnMetres: number;
  readonly teeth: number;
  readonly strokeS: number;
  readonly sides: readonly Side[];
  readonly controller: Controller;
  readonly logger: Logger;
  readonly supply: Supply;
  /** Newtons between the sides for each metre that one leads. */
  readonly couplingNewtonsPerMetre: number;
  /** Over which rope, belt and teeth take up the load. */
  readonly takeUpMetres: number;
  /** Coulomb friction gains this part for each kelvin below 20 °C, viscous friction that. */
  readonly coldPart: number;
  readonly stiffPart: number;
  /** Of the friction from one stroke to the next. */
  readonly scatter: number;
}
