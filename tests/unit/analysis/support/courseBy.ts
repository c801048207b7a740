import type { SideMeasures } from '../../../../analysis/measures.ts';
import type { Direction } from '../../../../analysis/trace.ts';

/** The usual course of a side's current, at each place what it is at `placeOf` it. */
export function courseBy({ profile }: SideMeasures, placeOf: (at: number) => number): (number | null)[] {
  const bins = profile.length;
  return profile.map((_, bin) => profile[Math.min(bins - 1, Math.floor(placeOf((bin + 0.5) / bins) * bins))]);
}

/** The course of a room that going `way` ends after a `part` of it; on the way back it begins there. */
export function cutCourse(measured: SideMeasures, part: number, way: Direction): (number | null)[] {
  return courseBy(measured, (at) => (way === 'extend' ? at * part : 1 - (1 - at) * part));
}
