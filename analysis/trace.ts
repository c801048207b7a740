/**
 * The words of the trade that the whole project uses, and the shape of one recorded stroke.
 *
 * - **room**: a slide room, a part of the vehicle's wall that is driven out and in.
 * - **stroke**: one extend or one retract of a room.
 * - **side**: one driven side of a room, with a motor of its own (in-wall) or `main` (one motor).
 * - **inrush**: the peak of current while the motor starts from standstill.
 * - **running current**: the current between inrush and end stop.
 * - **end stop**: the rise at the end of travel when the room meets its stop and the motor stalls.
 * - **position**: 0 fully retracted to 1 fully extended, whatever the direction.
 */

/** The ways that a room moves: out of the vehicle, and back in. */
export const DIRECTIONS = ['extend', 'retract'] as const;
/** One of `DIRECTIONS`. */
export type Direction = (typeof DIRECTIONS)[number];

/** The direction that is not this one. */
export const otherWay = (direction: Direction): Direction => (direction === 'extend' ? 'retract' : 'extend');

/** The part of its way that a side had gone when it came to a position. */
export const comesAt = (position: number, direction: Direction): number =>
  direction === 'extend' ? position : 1 - position;

/** What drives a room: racks in the side walls, rams through the frame, cables, or anything else. */
export const DRIVES = ['in-wall', 'through-frame', 'cable', 'other'] as const;
/** One of `DRIVES`. */
export type Drive = (typeof DRIVES)[number];

/** Work on a room, as people note it; which of it makes a new normal says `room/takeService.ts`. */
export const SERVICE_KINDS = [
  'cleaned',
  'lubricated',
  'fasteners-seated',
  'gear-replaced',
  'block-replaced',
  'motor-replaced',
  'retimed',
  'adjusted',
  'other',
] as const;
/** One of `SERVICE_KINDS`. */
export type ServiceKind = (typeof SERVICE_KINDS)[number];

/** What the analysis needs to know of a slide room. Lengths in metres or millimetres as named. */
export interface RoomDescription {
  readonly drive: Drive;
  /** Names of the driven sides, in order; never empty. */
  readonly sides: readonly string[];
  /** How far it goes from in to out; null, as below: nobody wrote it down. */
  readonly travelMetres: number | null;
  readonly gearTeeth: number | null;
  readonly rackPitchMm: number | null;
  /** The running current that a healthy side is expected to stay under, amperes. */
  readonly ratedAmps: number | null;
  /** Of the supply's system: 12 or 24 as a rule. */
  readonly nominalVolts: number;
  /** The direction in which a positive current drives the room. */
  readonly positiveDirection: Direction;
}

/** The current of one side. `timesS` rises strictly and is as long as `amps`; NaN is a missed sample. */
export interface SideTrace {
  readonly side: string;
  /** Seconds from the stroke's `startedAt`. */
  readonly timesS: Float64Array;
  /** Amperes, signed as sent. */
  readonly amps: Float64Array;
}

/** The supply voltage on the same clock as the sides. `timesS` rises strictly and is as long as `volts`, which has no gaps. */
export interface SupplyTrace {
  readonly timesS: Float64Array;
  readonly volts: Float64Array;
}

/** One stroke as it was recorded, before any interpretation. */
export interface StrokeTrace {
  /** null: to be told by the sign of the current. */
  readonly direction: Direction | null;
  /** In the order sent; a side may be missing, none may come twice. */
  readonly sides: readonly SideTrace[];
  readonly supply: SupplyTrace | null;
  readonly ambientC: number | null;
}
