import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../analysis/history.ts';
import { changed } from '../support/contexts.ts';
import { foldAll } from '../support/folded.ts';
import { ONE_MOTOR, ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const LEARNT = 30;
const STROKES = 60;

/**
 * Magnets that lost some of their field make a motor draw more for the same load, and turn faster (V = I R + Ke w): the front
 * side takes `times` the current and comes to its end seconds before the rear one. A slow logger sees no more of its start than
 * the foot, which stands as much higher.
 */
function weakened(times: number, fasterS: number, slowLogger: boolean): StrokeEvent[] {
  return strokeEvents(STROKES, ROOM, 4).map((event, i): StrokeEvent => {
    const slow = changed(event, {
      all: ({ runningAmps, inrushAmps }) => ({
        rateHz: slowLogger ? 20 : 200,
        inrushAmps: slowLogger ? 1.7 * runningAmps : inrushAmps,
      }),
    });
    if (i < LEARNT) return slow;
    const after = changed(slow, {
      front: (measured) => ({
        runningAmps: times * measured.runningAmps,
        runningAmpsP90: times * measured.runningAmpsP90,
        inrushAmps: slowLogger ? times * measured.inrushAmps : measured.inrushAmps,
        durationS: measured.durationS - fasterS,
        profile: measured.profile.map((amps) => (amps === null ? null : times * amps)),
        phases: {
          ...measured.phases,
          endStopStartS: (measured.phases.endStopStartS ?? 0) - fasterS,
          endS: measured.phases.endS - fasterS,
        },
      }),
    });
    return after.analysis.status === 'done'
      ? { ...after, analysis: { ...after.analysis, lagS: fasterS } }
      : after;
  });
}

test.each([
  { name: 'a little', times: 1.25, fasterS: 3, slowLogger: false },
  { name: 'much', times: 1.5, fasterS: 5, slowLogger: false },
  { name: 'much, seen by a slow logger', times: 1.5, fasterS: 5, slowLogger: true },
])(
  'a side that draws more and turns faster is said once, and neither its sensor nor the other side: $name',
  (how) => {
    const { warnings } = foldAll(ROOM, weakened(how.times, how.fasterS, how.slowLogger));
    expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['rising-draw', 'front']]);
    expect(warnings[0].clearedAtMs).toBeNull();
  },
);

test.each([
  { times: 1.25, drawn: 1.03 },
  { times: 1.45, drawn: 1.03 },
  { times: 1.7, drawn: 1.03 },
  { times: 1.35, drawn: 0.965 },
])(
  'a lone motor that is $times times as quick and draws $drawn times as much more ends nowhere early',
  ({ times, drawn }) => {
    const events = strokeEvents(STROKES, ONE_MOTOR, 4).map((event, i) =>
      i < LEARNT
        ? event
        : changed(event, {
            all: (measured) => ({
              runningAmps: drawn * times * measured.runningAmps,
              runningAmpsP90: drawn * times * measured.runningAmpsP90,
              durationS: measured.durationS / times,
              profile: measured.profile.map((amps) => (amps === null ? null : drawn * times * amps)),
            }),
          }),
    );
    const { warnings } = foldAll(ONE_MOTOR, events);
    expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['rising-draw', 'main']]);
  },
);
