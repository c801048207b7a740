import type { Direction } from '../../../analysis/trace.ts';
import type { ForcesClamp, ForcesRoom } from './room.ts';

/** What a clamp and its logger do to one side in one stroke, beside what they are made for. */
export interface ForcesSensing extends ForcesClamp {
  /** Part of the samples that is missed. */
  readonly missed: number;
  /** Left off: sees nothing of the current. */
  readonly off: boolean;
}

/** A factor on the force of a side by position, 0 retracted to 1 extended. */
export type ForceShape = (side: number, position: number) => number;

/** Everything about one stroke that is not lasting. */
export interface ForcesCondition {
  readonly direction: Direction;
  readonly ambientC: number;
  /** What the record says of it. */
  readonly toldC: number | null;
  /** Volts of the supply when nothing draws on it, and what stands between it and the motors. */
  readonly openVolts: number;
  readonly supplyOhms: number;
  /** Factor on each side's friction, and on what its motor draws without load. */
  readonly friction: readonly number[];
  readonly idle: readonly number[];
  /** Force of the ground's tilt on each side when extending, amperes. */
  readonly tiltAmps: readonly number[];
  readonly shapes: readonly ForceShape[];
  /** Part of a side's turns that its gear loses. */
  readonly slip: readonly number[];
  readonly from: number;
  readonly to: number;
  /** Where the stroke is held at its end: otherwise it is cut as it comes there. */
  readonly holdS: number;
  readonly pauses: readonly { readonly position: number; readonly durationS: number }[];
  readonly sensing: readonly ForcesSensing[];
  /** Sides that are left out of this record. */
  readonly leftOut: readonly number[];
  readonly rateHz: number;
  /** What the logger says its rate is, over what it is. */
  readonly rateError: number;
}

export function usualCondition(room: ForcesRoom, direction: Direction): ForcesCondition {
  return {
    direction,
    ambientC: 20,
    toldC: room.sendsAmbient ? 20 : null,
    openVolts: 12.8,
    supplyOhms: room.supplyOhms,
    friction: room.sides.map(() => 1),
    idle: room.sides.map(() => 1),
    tiltAmps: room.sides.map(() => 0),
    shapes: [],
    slip: room.sides.map(() => 0),
    from: direction === 'extend' ? 0 : 1,
    to: direction === 'extend' ? 1 : 0,
    holdS: room.endsBy === 'switch' ? 0 : room.stallS,
    pauses: [],
    sensing: room.clamps.map((clamp) => ({ ...clamp, missed: 0.0005, off: false })),
    leftOut: [],
    rateHz: room.rateHz,
    rateError: 1,
  };
}

/** The sensing of one side, or of all (null), changed. */
export function withSensing(
  condition: ForcesCondition,
  side: number | null,
  change: (sensing: ForcesSensing) => Partial<ForcesSensing>,
): ForcesCondition {
  return {
    ...condition,
    sensing: condition.sensing.map((own, at) =>
      side === null || at === side ? { ...own, ...change(own) } : own,
    ),
  };
}

/** The friction of one side, or of all (null), times a factor. */
export function withFriction(
  condition: ForcesCondition,
  side: number | null,
  factor: number,
): ForcesCondition {
  return {
    ...condition,
    friction: condition.friction.map((own, at) => (side === null || at === side ? own * factor : own)),
  };
}
