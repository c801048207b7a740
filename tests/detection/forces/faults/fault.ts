import {
  type LabelledFault,
  type LabelParts,
  labelOf,
} from '../../../../server/demo/simulator/faults/fault.ts';
import type { Random } from '../../../../server/demo/simulator/random.ts';
import type { ForcesCondition } from '../condition.ts';
import type { ForcesRoom } from '../room.ts';

/** A fault of a room: what the contract's words call it, and what it does to each stroke from its onset on. */
export interface ForcesFault extends LabelledFault {
  /** The stroke before which the room is lubricated, as part of the fault's story. */
  readonly serviceStroke: number | null;
  readonly change: (condition: ForcesCondition, stroke: number, random: Random) => ForcesCondition;
}

export interface ForcesFaultKind {
  readonly name: string;
  readonly leastSides: 1 | 2;
  /** Whether the fault can be told from what this room's logger records, in principle. */
  readonly suits: (room: ForcesRoom) => boolean;
  /** Strokes that the story needs before and after its onset beyond the usual. */
  readonly leastBefore?: number;
  readonly leastAfter?: number;
  readonly draw: (room: ForcesRoom, random: Random, onset: number) => ForcesFault;
}

export const SUITS_ALL = (): boolean => true;

/** Both sides are seen, so that what happens between them can be told. */
export const seesAll = (room: ForcesRoom): boolean => room.recorded.length === room.sides.length;

export function forcesFault(
  name: string,
  onset: number,
  label: LabelParts,
  change: ForcesFault['change'],
): ForcesFault {
  return {
    name,
    startsStroke: onset,
    serviceStroke: null,
    change,
    label: labelOf(onset, label),
  };
}

/** A recorded side, by its index. */
export function anySide(room: ForcesRoom, random: Random): number {
  return random.pick(room.recorded);
}

/** The contract's name for a side, or for both alike (null): with one side recorded, only that one can be named. */
export function sideName(room: ForcesRoom, side: number | null): string | null {
  if (side !== null) return room.facts.sides[side];
  return room.recorded.length === 1 ? room.facts.sides[room.recorded[0]] : null;
}

/** The smaller running current of the recorded sides. */
export function leastAmps(room: ForcesRoom, side: number): number {
  return Math.min(room.runningAmps[side].extend, room.runningAmps[side].retract);
}

/** The factor on friction that raises a side's running current by a part. */
export function frictionFor(room: ForcesRoom, side: number, rise: number): number {
  const amps = (room.runningAmps[side].extend + room.runningAmps[side].retract) / 2;
  return 1 + (rise * amps) / (amps - room.sides[side].idleAmps);
}
