import type { Direction } from '../../../analysis/trace.ts';
import type { SimulatedRoom } from './room.ts';
import { batterySupply, type Supply } from './supply.ts';

/** A short extra resistance at one place of the travel. */
export interface Bump {
  readonly sideIndex: number;
  /** 0 fully retracted to 1 fully extended. */
  readonly position: number;
  readonly widthMetres: number;
  /** Height in parts of the side's own running load; negative: the load falls off. */
  readonly part: number;
}

/** A stretch of the travel over which a side carries next to nothing. */
interface Drop {
  readonly sideIndex: number;
  readonly from: number;
  readonly to: number;
  /** The part of its load that the side keeps. */
  readonly keeps: number;
  /** The part of what it sheds that the other sides take. */
  readonly taken: number;
}

/** The sensor of one side during one stroke. */
export interface SensorState {
  readonly offsetAmps: number;
  /** Offset at the end of the record less that at its start. */
  readonly offsetDriftAmps: number;
  readonly scale: number;
  readonly noiseAmps: number;
  readonly stepAmps: number;
  readonly rangeAmps: number;
  /** Chance that a sample is missed. */
  readonly missed: number;
  /** A stretch without samples, in parts of the record. */
  readonly gap: { readonly from: number; readonly to: number } | null;
  /** The clamp hangs beside the wire. */
  readonly off: boolean;
}

interface LoggerState {
  readonly rateHz: number;
  /** What it says its rate is, over what it is: the drift of its clock. */
  readonly rateError: number;
  /** In mid-stroke its clock stands still for this long (negative: jumps ahead) while the samples go on. */
  readonly clockSlipS: number;
  readonly idleBeforeS: number;
  readonly idleAfterS: number;
  readonly form: 'rate' | 'times';
  readonly unit: 'amps' | 'milliamps';
  readonly supplyRateHz: number | null;
  readonly sendsAmbient: boolean;
  readonly sendsDirection: boolean;
  readonly signed: boolean;
  /** Sides that are recorded, by index. */
  readonly sides: readonly number[];
}

/** Everything about one stroke that is not the room itself. */
export interface StrokeCondition {
  readonly direction: Direction;
  readonly startedAt: string;
  readonly ambientC: number;
  readonly supply: Supply;
  /** Slope along the travel, degrees; positive: the extending room climbs. */
  readonly tiltDegrees: number;
  /** Resistance of the whole room against its normal. */
  readonly frictionFactor: number;
  /** Resistance of each side against its normal. */
  readonly sideFactors: readonly number[];
  /** Load moved on to each side, in parts of the whole room's; adds up to 0. */
  readonly shareShift: readonly number[];
  /** Voltage that reaches each side, 1 as a rule (a bad connector, a weak output of the controller). */
  readonly voltageFactors: readonly number[];
  /** Whether the controller keeps the sides in step. */
  readonly keepsStep: boolean;
  readonly bumps: readonly Bump[];
  readonly drops: readonly Drop[];
  readonly startPosition: number;
  /** Where something stands in the way; 0 or 1: the end stop itself. */
  readonly stopPosition: number;
  /** Where the user lets go before any stop; null: the controller ends the stroke by its stall. */
  readonly releasePosition: number | null;
  readonly pauses: readonly { readonly position: number; readonly durationS: number }[];
  readonly sensors: readonly SensorState[];
  readonly logger: LoggerState;
}

/** A plain healthy stroke: level, 20 °C, a full battery, the room's own logger; `changes` are laid over it. */
export function healthyCondition(
  room: SimulatedRoom,
  direction: Direction,
  changes: Partial<StrokeCondition> = {},
): StrokeCondition {
  const { logging } = room;
  const extending = direction === 'extend';
  const sensorOf = (scale: number): SensorState => ({
    offsetAmps: 0,
    offsetDriftAmps: 0,
    scale,
    noiseAmps: logging.noiseAmps,
    stepAmps: logging.stepAmps,
    rangeAmps: logging.rangeAmps,
    missed: 0,
    gap: null,
    off: false,
  });
  return {
    direction,
    startedAt: '2026-01-01T12:00:00.000Z',
    ambientC: 20,
    supply: batterySupply(0.95, room.battery.ohms, room.battery.capacityAh),
    tiltDegrees: 0,
    frictionFactor: 1,
    sideFactors: room.motors.map(() => 1),
    shareShift: room.motors.map(() => 0),
    voltageFactors: room.motors.map(() => 1),
    keepsStep: true,
    bumps: [],
    drops: [],
    startPosition: extending ? 0 : 1,
    stopPosition: extending ? 1 : 0,
    releasePosition: null,
    pauses: [],
    sensors: logging.scales.map(sensorOf),
    logger: {
      rateHz: logging.rateHz,
      rateError: 1,
      clockSlipS: 0,
      idleBeforeS: 0.6,
      idleAfterS: 0.6,
      form: logging.form,
      unit: logging.unit,
      supplyRateHz: logging.supplyRateHz,
      sendsAmbient: logging.sendsAmbient,
      sendsDirection: logging.sendsDirection,
      signed: logging.signed,
      sides: room.motors.map((_, index) => index),
    },
    ...changes,
  };
}
