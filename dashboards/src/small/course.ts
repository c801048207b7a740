import type { Trend } from '../api/types.ts';
import { dayText } from '../format.ts';
import type { SmallLine } from './smallLine.ts';

/** The latest strokes tell a course that a phone can show. */
export const MOST_STROKES = 60;

/** The place of one of so many strokes along a picture, 0 to 1. */
export const alongOf = (i: number, count: number): number => (count < 2 ? 0.5 : i / (count - 1));

/** A side's strokes as parts of its own normal, oldest first. */
export interface SideCourse {
  readonly side: string | null;
  readonly line: SmallLine;
  /** The latest stroke as a part of what was expected of it, as the room's own sentence has it; null while nothing was. */
  readonly latest: number | null;
  readonly beyond: boolean;
  /** Whether its values are parts of its normal: without one they are what was measured. */
  readonly isParts: boolean;
  /** The limits as parts of the normal; null while learning. */
  readonly band: readonly [number, number] | null;
  /** Where work was done, 0 to 1 along the picture. */
  readonly work: readonly number[];
}

/** Of measures that may be 0 or negative (a lag, a share) no part can be told: `scale` 1 leaves them as they are. */
export function courseOf(trend: Trend, side: string | null, index: number, asParts: boolean): SideCourse {
  const points = trend.points.slice(-MOST_STROKES);
  const { limits } = trend;
  const isParts = asParts && limits !== null && limits.centre > 0;
  const scale = isParts ? limits.centre : 1;
  const along = (i: number) => alongOf(i, points.length);
  const values = points.map((point) => (point.adjusted ?? point.value) / scale);
  const last = points.at(-1);
  const work = trend.services.flatMap((service) => {
    const next = points.findIndex((point) => point.at >= service.at);
    // What was done before all that is shown, or after it, stands at the edge.
    return next === 0 ? [] : [next < 0 ? 1 : (along(next - 1) + along(next)) / 2];
  });
  return {
    side,
    line: {
      side: index,
      dotted: true,
      points: values.map((value, i) => [along(i), value]),
      beyond: points.flatMap((point, i) => (point.beyond === true ? i : [])),
    },
    latest: last === undefined || last.expected === null ? null : last.value / last.expected,
    beyond: last?.beyond === true,
    isParts,
    band: limits === null ? null : [limits.lower / scale, limits.upper / scale],
    work,
  };
}

/** All that a picture of these lines and this band has to hold. */
export const drawnValues = (
  lines: readonly SmallLine[],
  band: readonly [number, number] | null,
): readonly number[] => [
  ...lines.flatMap((line) => line.points.flatMap(([, value]) => value ?? [])),
  ...(band ?? []),
];

/** The days of the first and the last stroke of a course; empty where the reader's zone is not known yet. */
export function courseEnds(strokes: readonly { readonly at: string }[]): readonly [string, string] {
  const shown = strokes.slice(-MOST_STROKES);
  return shown.length === 0 ? ['', ''] : [dayText(shown[0].at), dayText(shown[shown.length - 1].at)];
}

/** The band that holds the bands of all sides; null while none is known. */
export function bandOf(courses: readonly SideCourse[]): readonly [number, number] | null {
  const bands = courses.flatMap((course) => (course.band === null ? [] : [course.band]));
  if (bands.length === 0) return null;
  return [Math.min(...bands.map(([low]) => low)), Math.max(...bands.map(([, high]) => high))];
}

/**
 * From when on a course is asked for: a year before the latest stroke, from the beginning of its month, so that
 * the address, and with it what the device has kept, stays the same for a while.
 */
export function courseBegin(lastStrokeAt: string): string {
  const last = new Date(lastStrokeAt);
  return new Date(Date.UTC(last.getUTCFullYear(), last.getUTCMonth() - 12, 1)).toISOString();
}
