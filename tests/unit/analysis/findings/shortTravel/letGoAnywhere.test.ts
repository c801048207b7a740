import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { changed } from '../../support/contexts.ts';
import { cutCourse } from '../../support/courseBy.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { saidOf } from '../../support/saidOf.ts';
import { directionOf, strokeEvents } from '../../support/strokeEvents.ts';

const STROKES = 90;
const FROM = 40;

/** Retracts that are let go after so much of their way, without a stop, and the way out again from there. */
function drawnInBy(parts: readonly number[]): StrokeEvent[] {
  return strokeEvents(STROKES, ONE_MOTOR, 5).map((event, i) => {
    const since = i - FROM;
    if (since < 1) return event;
    const part = parts[Math.floor((since - 1) / 2) % parts.length];
    const way = directionOf(i);
    return changed(event, {
      all: (measured) => ({
        durationS: part * measured.durationS,
        profile: cutCourse(measured, part, way),
        endStopAmps: way === 'retract' ? null : measured.endStopAmps,
      }),
    });
  });
}

test('who draws the room in by a piece and out again lets go anywhere: nothing ends the travel early', () => {
  expect(saidOf(drawnInBy([0.4, 0.65, 0.3, 0.55, 0.45, 0.7]))).toEqual([]);
});

test('what ends it at one place is said, also where the motor never stands there', () => {
  expect(saidOf(drawnInBy([0.6, 0.58, 0.61]))).toEqual([['short-travel', 'retract']]);
});
