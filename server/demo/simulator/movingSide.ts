import { copperFactor } from './copper.ts';
import type { SideMotor } from './room.ts';

/** A worm gear cannot be driven backwards; what pushes the room along takes only this part off the motor's load. */
const HELP_PART = 0.3;
/** Braking of a motor that is switched off and shorted by its controller. */
const BRAKE_S = 0.03;
/** A relay's spark and diode end the current faster than the winding alone would. */
const SWITCH_OFF_TIMES = 4;
const NO_AMPS = 1e-4;

/** What one side meets and how it stands, changed step by step. */
export interface MovingSide {
  readonly motor: SideMotor;
  readonly wireOhms: number;
  /** Newtons along the travel, retracted to extended (`loadTables`). */
  readonly table: Float64Array;
  readonly slopeN: number;
  readonly stopNPerMetre: number;
  amps: number;
  radiansPerS: number;
  /** Travel since the start of the stroke, always growing. */
  goneMetres: number;
  windingC: number;
  stalledS: number;
  startedS: number;
  stopS: number | null;
  offS: number | null;
}

/** The winding by one implicit step; `volts` at the end of the wire's controller side, null: switched off. */
export function stepCurrent(side: MovingSide, volts: number | null, stepS: number): void {
  const { motor } = side;
  const ohms = motor.windingOhms * copperFactor(side.windingC) + side.wireOhms;
  const gain = stepS / motor.inductanceHenry;
  if (volts === null) {
    side.amps /= 1 + SWITCH_OFF_TIMES * gain * ohms;
    if (side.amps < NO_AMPS) side.amps = 0;
    side.radiansPerS *= 1 - stepS / BRAKE_S;
    return;
  }
  const driving = volts - motor.fluxConstant * side.radiansPerS;
  side.amps = Math.max((side.amps + gain * driving) / (1 + gain * ohms), 0);
}

/** Shaft and room by one Euler-Cromer step under a force against the travel. */
export function stepMotion(side: MovingSide, forceN: number, stepS: number): void {
  const { motor } = side;
  const felt = forceN > 0 ? forceN / motor.gearEfficiency : forceN * HELP_PART;
  const torque = motor.fluxConstant * (side.amps - motor.noLoadAmps) - felt * motor.metresPerRadian;
  side.radiansPerS = Math.max(side.radiansPerS + (stepS / motor.inertia) * torque, 0);
  side.goneMetres += side.radiansPerS * motor.metresPerRadian * stepS;
}

export function stepHeat(side: MovingSide, ambientC: number, stepS: number): void {
  const { motor } = side;
  const watts = side.amps * side.amps * motor.windingOhms * copperFactor(side.windingC);
  const lost = motor.heatLossWPerK * (side.windingC - ambientC);
  side.windingC += ((watts - lost) * stepS) / motor.heatCapacityJPerK;
}
