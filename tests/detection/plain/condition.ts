import type { Direction } from '../../../analysis/trace.ts';
import type { PlainRoom } from './room.ts';

export interface PlainSensor {
  readonly scale: number;
  readonly offsetAmps: number;
  readonly noiseAmps: number;
  readonly rangeAmps: number;
  readonly missed: number;
  readonly off: boolean;
}

/** Everything about one stroke that is not the room itself. */
export interface PlainCondition {
  readonly direction: Direction;
  readonly ambientC: number;
  /** Volts of the supply when nothing draws on it. */
  readonly openVolts: number;
  /** Current of each side against its normal. */
  readonly levels: readonly number[];
  /** Factor on a side's current by position (0 retracted to 1 extended) and seconds since the start. */
  readonly shapes: readonly ((side: number, position: number, timeS: number) => number)[];
  /** Seconds that each side takes longer. */
  readonly laterS: readonly number[];
  /** Where the stroke begins and ends. */
  readonly from: number;
  readonly to: number;
  /** Whether the motor stalls at the end. */
  readonly stalls: boolean;
  readonly pauses: readonly { readonly position: number; readonly durationS: number }[];
  readonly sensors: readonly PlainSensor[];
  readonly rateHz: number;
  /** What the logger says its rate is, over what it is. */
  readonly rateError: number;
}

export function plainCondition(room: PlainRoom, direction: Direction): PlainCondition {
  return {
    direction,
    ambientC: 20,
    openVolts: 12.8,
    levels: room.sides.map(() => 1),
    shapes: [],
    laterS: room.sides.map(() => 0),
    from: direction === 'extend' ? 0 : 1,
    to: direction === 'extend' ? 1 : 0,
    stalls: room.stallS > 0,
    pauses: [],
    sensors: room.sides.map((_, side) => ({
      scale: 1,
      offsetAmps: room.offsetAmps[side],
      noiseAmps: room.whiteAmps,
      rangeAmps: 400,
      missed: 0.001,
      off: false,
    })),
    rateHz: room.rateHz,
    rateError: 1,
  };
}
