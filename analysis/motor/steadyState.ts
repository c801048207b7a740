/** A permanent-magnet direct-current motor with its leads, in SI units. */
export interface Motor {
  /** Resistance of winding, brushes and leads. */
  readonly ohms: number;
  /** Volts per radian per second, which is also newton metres per ampere. */
  readonly constant: number;
  /** Current that its own friction takes. */
  readonly noLoadAmps: number;
}

/** What a motor does once current and speed have settled. */
export interface SteadyState {
  readonly amps: number;
  readonly radiansPerSecond: number;
  readonly backEmfVolts: number;
  /** Mechanical power at the shaft over electrical power; 0 where it takes none. */
  readonly efficiency: number;
}

/**
 * Current and speed at a supply voltage and a load torque at the shaft, once both have settled. A speed below 0
 * says that the load turns the motor back. RangeError for a motor without resistance or constant.
 *
 * Source: V = I R + Ke w and T = Kt (I - I0) with Kt = Ke: A. E. Fitzgerald, C. Kingsley, S. D. Umans, Electric
 * Machinery, section 7.2.
 */
export function steadyState(motor: Motor, supplyVolts: number, loadNewtonMetres: number): SteadyState {
  check(motor);
  const amps = loadNewtonMetres / motor.constant + motor.noLoadAmps;
  const volts = backEmfVolts(motor, supplyVolts, amps);
  const radiansPerSecond = volts / motor.constant;
  const taken = supplyVolts * amps;
  const efficiency = taken > 0 ? (loadNewtonMetres * radiansPerSecond) / taken : 0;
  return { amps, radiansPerSecond, backEmfVolts: volts, efficiency };
}

/** Voltage that the turning motor sets against its supply, by the current that it takes. */
export function backEmfVolts(motor: Pick<Motor, 'ohms'>, supplyVolts: number, amps: number): number {
  return supplyVolts - amps * motor.ohms;
}

/** Current at standstill, before the motor turns: what the inrush peak nears. It says nothing about friction. */
export function stallAmps(motor: Pick<Motor, 'ohms'>, supplyVolts: number): number {
  if (!(motor.ohms > 0)) throw new RangeError(`a motor has a resistance above 0, not ${motor.ohms}`);
  return supplyVolts / motor.ohms;
}

/** Torque at the shaft at a current, what friction takes left out. */
export function shaftTorque(motor: Motor, amps: number): number {
  return motor.constant * (amps - motor.noLoadAmps);
}

/** Speed with nothing to drive but itself. */
export function noLoadSpeed(motor: Motor, supplyVolts: number): number {
  check(motor);
  return backEmfVolts(motor, supplyVolts, motor.noLoadAmps) / motor.constant;
}

/** Radians per second that each newton metre of load costs. */
export function speedPerTorque(motor: Motor): number {
  check(motor);
  return motor.ohms / motor.constant ** 2;
}

/** Time in which a change of speed has gone by all but 1/e, for rotor and load inertia in kilogram square metres. */
export function mechanicalTimeConstantS(motor: Motor, inertia: number): number {
  return inertia * speedPerTorque(motor);
}

/** Best efficiency at any load: (1 - sqrt(I0 / I stall))². */
export function bestEfficiency(motor: Motor, supplyVolts: number): number {
  return (1 - Math.sqrt(motor.noLoadAmps / stallAmps(motor, supplyVolts))) ** 2;
}

const RADIANS_PER_SECOND_PER_RPM = Math.PI / 30;

/** Revolutions per minute as radians per second. */
export function fromRpm(rpm: number): number {
  return rpm * RADIANS_PER_SECOND_PER_RPM;
}

/** Radians per second as revolutions per minute. */
export function toRpm(radiansPerSecond: number): number {
  return radiansPerSecond / RADIANS_PER_SECOND_PER_RPM;
}

function check({ ohms, constant }: Motor): void {
  if (!(ohms > 0 && constant > 0)) {
    throw new RangeError(`a motor has a resistance and a constant above 0, not ${ohms} and ${constant}`);
  }
}
