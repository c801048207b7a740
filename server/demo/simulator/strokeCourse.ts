import type { StrokeCondition } from './condition.ts';
import type { SimulatedRoom } from './room.ts';

/** Where one stroke begins, waits and ends. Metres are counted from where it begins, along its own way. */
export interface StrokeCourse {
  /** 1 on the way out, -1 on the way in. */
  readonly heading: 1 | -1;
  /** Where the end stop lies, or what stands in the way. */
  readonly stopMetres: number;
  /** Where whoever holds the switch lets go; infinite: nowhere. */
  readonly releaseMetres: number;
  /** In the order in which the room comes to them. */
  readonly pauses: readonly { readonly atMetres: number; readonly durationS: number }[];
  /** The place on the travel, 0 fully retracted to 1 fully extended, of a side that has gone so far. */
  positionOf(goneMetres: number): number;
}

/** The course of a stroke that a room makes under these conditions. */
export function strokeCourse(room: SimulatedRoom, condition: StrokeCondition): StrokeCourse {
  const { travelMetres } = room.facts;
  const { startPosition, releasePosition } = condition;
  const heading = condition.direction === 'extend' ? 1 : -1;
  const metresTo = (position: number) => Math.abs(position - startPosition) * travelMetres;
  return {
    heading,
    stopMetres: metresTo(condition.stopPosition),
    releaseMetres: releasePosition === null ? Number.POSITIVE_INFINITY : metresTo(releasePosition),
    pauses: condition.pauses
      .map(({ position, durationS }) => ({ atMetres: metresTo(position), durationS }))
      .sort((one, other) => one.atMetres - other.atMetres),
    positionOf: (goneMetres) => startPosition + (heading * goneMetres) / travelMetres,
  };
}
