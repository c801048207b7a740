import type { Direction, Drive } from '../../../analysis/trace.ts';

/** What a dealer would write down of the room: the fields of the contract's room. */
export interface RoomFacts {
  readonly name: string;
  readonly drive: Drive;
  readonly sides: readonly string[];
  readonly travelMetres: number;
  readonly gearTeeth: number;
  readonly rackPitchMm: number;
  readonly ratedAmps: number | null;
  readonly nominalVolts: number;
  readonly positiveDirection: Direction;
}

/** One motor with its gear: constants at 20 °C, seen at the motor's shaft. */
export interface SideMotor {
  readonly windingOhms: number;
  /** Both conductors from the supply's terminals to the motor. */
  readonly wireOhms: number;
  readonly inductanceHenry: number;
  /** Back-EMF constant, V·s/rad, which is the torque constant in N·m/A. */
  readonly fluxConstant: number;
  readonly noLoadAmps: number;
  /** Rotor, gear and the moved mass as the shaft feels it, kg·m². */
  readonly inertia: number;
  readonly heatCapacityJPerK: number;
  readonly heatLossWPerK: number;
  /** Travel of the rack for one radian of the shaft. */
  readonly metresPerRadian: number;
  /** Part of the shaft's work that reaches the rack. */
  readonly gearEfficiency: number;
  /** This side's part of the room's resistance, about 1 / sides. */
  readonly loadShare: number;
  /** Smooth course of the resistance about 1 over the travel, retracted to extended, evenly spaced. */
  readonly texture: readonly number[];
  /** Part of the load that swings once a tooth, and once a turn of the gear. */
  readonly toothRipple: number;
  readonly turnRipple: number;
  /** Where in its turn the gear stands at position 0, radians. */
  readonly gearPhase: number;
}

/** What resists the whole room. */
interface RoomLoad {
  /** Resistance at the running speed, 20 °C, level ground, mid-travel, extending. Newtons for the whole room. */
  readonly forceN: number;
  /** Part of `forceN` that is proportional to speed; the rest is dry friction. */
  readonly viscousPart: number;
  /** Speed at which `forceN` holds. */
  readonly speedMetresPerS: number;
  /** Retracting against extending. */
  readonly retractFactor: number;
  readonly massKg: number;
  /** Lubricant: viscous friction grows e-fold for this many °C of cooling. */
  readonly coldStiffeningC: number;
  /** Dry friction grows by this part for each °C below 20. */
  readonly coldFrictionPerC: number;
  /** Seal: extra resistance at the very end, in parts of `forceN`, and how far from the end it begins. */
  readonly sealPart: number;
  readonly sealMetres: number;
}

/** How the sides are held together, and how a stroke ends. */
interface RoomControl {
  /** Racking of the room: newtons a metre once the sides are further apart than the play. */
  readonly skewNPerMetre: number;
  readonly skewPlayMetres: number;
  /** The controller lowers the leading side's voltage by this part for each metre of lead; 0: it does not. */
  readonly stepGainPerMetre: number;
  /** The end stop gives this much under the full stall force. */
  readonly stopGiveMetres: number;
  /** How long the controller lets a motor stall before it switches off. */
  readonly stallS: number;
  /** The controller gives up after this long. */
  readonly timeoutS: number;
}

/** What records this room as a rule. */
interface RoomLogging {
  readonly rateHz: number;
  readonly noiseAmps: number;
  readonly stepAmps: number;
  readonly rangeAmps: number;
  /** What each side's sensor shows of a true ampere: clamps are rarely right to the percent. */
  readonly scales: readonly number[];
  readonly supplyRateHz: number | null;
  readonly sendsAmbient: boolean;
  /** Reversed current reads negative; otherwise the sensor shows the amount alone. */
  readonly signed: boolean;
  /** Otherwise the sign of the current has to tell it. */
  readonly sendsDirection: boolean;
  readonly form: 'rate' | 'times';
  readonly unit: 'amps' | 'milliamps';
}

interface RoomBattery {
  readonly ohms: number;
  readonly capacityAh: number;
}

/** A slide room that can be simulated: the truth behind the recordings. */
export interface SimulatedRoom {
  readonly facts: RoomFacts;
  /** One a side, in the order of `facts.sides`. */
  readonly motors: readonly SideMotor[];
  readonly load: RoomLoad;
  readonly control: RoomControl;
  readonly logging: RoomLogging;
  readonly battery: RoomBattery;
  /** The running current that each side was drawn with, at 12.6 V, 20 °C, level, extending. */
  readonly runningAmps: readonly number[];
}
