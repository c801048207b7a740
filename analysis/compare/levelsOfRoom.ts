import { holmRejections } from '../statistics/holmRejections.ts';
import type { AtReference } from './atReference.ts';
import { CONFIDENCE, type ShiftInterval, type StrokeSpread, shiftInterval } from './shiftInterval.ts';

/** The running current of one side and direction. */
export interface LevelChange {
  readonly values: Pick<AtReference, 'before' | 'after' | 'unsure'>;
  readonly spread: StrokeSpread;
}

/**
 * How far the running currents of a room's sides and directions moved, each with the interval that it has to leave zero by so that
 * all of them have one error rate: an interval of 95 % for each by itself would call every fifth room changed that did not. By
 * the spread of the strokes, for the ranks of a few reach so far only with all of their differences; none is narrower than the
 * interval that is told by itself. Null where a span holds no stroke.
 *
 * Source: `holmRejections`.
 */
export function levelsOfRoom(levels: readonly LevelChange[], errorRate: number): (ShiftInterval | null)[] {
  const told = levels.filter(({ values }) => values.before.length > 0 && values.after.length > 0);
  const rejectedAt = holmRejections(told.length, errorRate, (index, level) =>
    leavesZero(at(told[index], level)),
  );
  const left = rejectedAt.filter((level) => level === null).length;
  return levels.map((each) => {
    const index = told.indexOf(each);
    return index < 0 ? null : at(each, rejectedAt[index] ?? errorRate / left);
  });
}

function at({ values, spread }: LevelChange, level: number): ShiftInterval | null {
  const own = shiftInterval(values, spread, CONFIDENCE);
  const joint = shiftInterval(values, spread, 1 - level, 'spread');
  if (own === null || joint === null) return null;
  return {
    shift: own.shift,
    lower: Math.min(own.lower, joint.lower),
    upper: Math.max(own.upper, joint.upper),
  };
}

/** Whether the interval says that there is a change. */
export function leavesZero(interval: ShiftInterval | null): boolean {
  return interval !== null && (interval.lower > 0 || interval.upper < 0);
}
